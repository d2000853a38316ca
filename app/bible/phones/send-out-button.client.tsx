"use client";

import { useState, useTransition } from "react";
import { sendOutAction } from "./actions.ts";

/** Sends one device out, or all of them. */
export function SendOutButton({ id, label }: { readonly id?: string; readonly label: string }) {
  const [isSending, start] = useTransition();
  const [problem, setProblem] = useState("");
  const send = (): void => {
    start(async () => {
      const state = await sendOutAction(id === undefined ? {} : { id }).catch(() => undefined);
      setProblem(
        state?.kind === "saved" ? "" : "Noonbook did not answer; the device is still let in.",
      );
    });
  };
  return (
    <>
      <button className="btn plain slim" type="button" disabled={isSending} onClick={send}>
        {label}
      </button>
      <span role="status">{problem}</span>
    </>
  );
}
