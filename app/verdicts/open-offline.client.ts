"use client";

import { useEffect, useState } from "react";

/**
 * Asks the browser to keep this page and its hashed files for opening without a connection. True once
 * they are kept, false where the browser allows no worker (a plain address in the home network).
 */
export function useOpenOffline(): boolean | undefined {
  const [isKept, setIsKept] = useState<boolean>();
  useEffect(() => {
    if (!("serviceWorker" in navigator)) {
      queueMicrotask(() => {
        setIsKept(false);
      });
      return;
    }
    const { serviceWorker } = navigator;
    const onMessage = (event: MessageEvent<{ kind?: string }>): void => {
      if (event.data.kind === "kept") setIsKept(true);
    };
    serviceWorker.addEventListener("message", onMessage);
    void keepPage(serviceWorker).catch(() => {
      setIsKept(false);
    });
    return () => {
      serviceWorker.removeEventListener("message", onMessage);
    };
  }, []);
  return isKept;
}

async function keepPage(serviceWorker: ServiceWorkerContainer): Promise<void> {
  await loaded();
  // The browser looks for a newer worker by itself: asked for again on every visit, its script would be
  // cut off whenever the page is left at once.
  const standing = await serviceWorker.getRegistration(SCOPE);
  if (!standing) await serviceWorker.register("/verdicts-worker.js", { scope: SCOPE });
  const { active } = await serviceWorker.ready;
  const files = performance
    .getEntriesByType("resource")
    .map(({ name }) => new URL(name))
    .filter(
      ({ origin, pathname }) => origin === location.origin && pathname.startsWith("/_next/static/"),
    )
    .map(({ href }) => href);
  active?.postMessage({ kind: "keep", page: location.href, files: [...new Set(files)] });
}

const SCOPE = "/verdicts";

/** Waits until the page and its files are there, so that the worker takes nothing from them. */
async function loaded(): Promise<void> {
  if (document.readyState === "complete") return;
  await new Promise((resolve) => {
    window.addEventListener("load", resolve, { once: true });
  });
}
