"use client";

import { useState } from "react";
import { keepDraftAction } from "./actions.ts";
import type { PieceKey } from "./piece-key.ts";

/** Copies a text, once no guard holds it back, and keeps what was copied. */
export function CopyButton({
  piece,
  name,
  text,
  open,
  isSlim = false,
}: {
  readonly piece: PieceKey;
  /** What is copied, for those who cannot see where the button stands. */
  readonly name: string;
  readonly text: string;
  readonly open: number;
  readonly isSlim?: boolean;
}) {
  const [status, setStatus] = useState("");
  const copy = async (): Promise<void> => {
    if (!(await toClipboard(text))) {
      setStatus("The browser did not allow it. Select the text and copy it by hand.");
      return;
    }
    setStatus("Copied.");
    const state = await keepDraftAction(piece).catch(() => undefined);
    if (state?.kind === "refused") setStatus(`Copied. ${state.message}`);
  };
  const size = isSlim ? "btn slim" : "btn";
  return (
    <>
      <button className={size} type="button" disabled={open > 0} onClick={() => void copy()}>
        {open > 0 ? (
          `Copy text: ${open} ${open === 1 ? "guard" : "guards"} open`
        ) : (
          <>
            Copy text<span className="sr"> of {name}</span>
          </>
        )}
      </button>
      <span role="status">{status}</span>
    </>
  );
}

/** Copies a text that no guard stands before. */
export function CopyPlain({ name, text }: { readonly name: string; readonly text: string }) {
  const [status, setStatus] = useState("");
  const copy = async (): Promise<void> => {
    const isDone = await toClipboard(text);
    setStatus(isDone ? "Copied." : "The browser did not allow it. Copy it by hand.");
  };
  return (
    <p className="row noprint">
      <button className="btn slim" type="button" onClick={() => void copy()}>
        Copy<span className="sr"> {name}</span>
      </button>
      <span role="status">{status}</span>
    </p>
  );
}

/** The clipboard where the page may use it; else the old way, which works without a secure address. */
async function toClipboard(text: string): Promise<boolean> {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    const area = document.createElement("textarea");
    area.value = text;
    document.body.append(area);
    area.select();
    const isDone = document.execCommand("copy");
    area.remove();
    return isDone;
  }
}
