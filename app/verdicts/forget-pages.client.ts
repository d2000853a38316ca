"use client";

/**
 * Tells the worker of the verdict pages to forget what it keeps: another series stands now. Where the
 * browser has no worker, nothing is kept.
 */
export async function forgetVerdictPages(): Promise<void> {
  if (!("serviceWorker" in navigator)) return;
  const registration = await navigator.serviceWorker
    .getRegistration("/verdicts")
    .catch(() => undefined);
  registration?.active?.postMessage({ kind: "forget" });
}
