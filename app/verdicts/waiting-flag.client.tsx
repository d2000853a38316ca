"use client";

import Link from "next/link";
import { useEffect, useState } from "react";

const KEY = "noonbook.waiting";

/** How many entries wait, and the day they are sent from: not every day has a verdict page. */
type Held = { readonly count: number; readonly day: string };
const NOTHING: Held = { count: 0, day: "" };

/** Remembers for the other rooms how many entries wait on this phone. */
export function noteWaiting({ count, day }: Held): void {
  try {
    if (count === 0) localStorage.removeItem(KEY);
    else localStorage.setItem(KEY, `${count} ${day}`);
  } catch {
    // A browser that keeps nothing shows what waits on the verdict page alone.
  }
}

function readWaiting(): Held {
  try {
    const found = /^(\d+) (\d{4}-\d{2}-\d{2})$/.exec(localStorage.getItem(KEY) ?? "");
    return found ? { count: Number(found[1]), day: found[2] ?? "" } : NOTHING;
  } catch {
    return NOTHING;
  }
}

/** In every other room: what this phone has not sent yet, and the way to where it is sent. */
export function WaitingFlag({ path }: { readonly path: string }) {
  const [{ count, day }, setHeld] = useState(NOTHING);
  useEffect(() => {
    const look = (): void => {
      setHeld(readWaiting());
    };
    queueMicrotask(look);
    window.addEventListener("storage", look);
    return () => {
      window.removeEventListener("storage", look);
    };
  }, [path]);
  if (count === 0 || path.startsWith("/verdicts")) return null;
  return (
    <p className="demo">
      <Link className="btn plain slim" href={`/verdicts/${day}`} prefetch={false}>
        {count === 1 ? "1 entry waits" : `${count} entries wait`} on this phone: send
      </Link>
    </p>
  );
}
