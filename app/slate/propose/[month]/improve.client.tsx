"use client";

import { useRouter } from "next/navigation";
import { useEffect, useRef, useState } from "react";
import type { ImproveNews } from "#lib/use-cases/proposal/improve-proposal.ts";
import { proofWords } from "./proof-words.ts";

/** Improves the proposal while the user looks on: how good it is, how good any could be, and a way to stop. */
export function Improve({ month, start }: { readonly month: string; readonly start: string }) {
  const router = useRouter();
  const [words, setWords] = useState(start);
  const [isRunning, setRunning] = useState(false);
  const stop = useRef<AbortController>(null);
  useEffect(() => () => stop.current?.abort(), []);
  const run = async (): Promise<void> => {
    const control = new AbortController();
    stop.current = control;
    setRunning(true);
    try {
      await follow(month, control.signal, (news) => setWords(proofWords(news)));
    } catch {
      if (!control.signal.aborted)
        setWords("Noonbook did not answer. The proposal stays as it is.");
    }
    setRunning(false);
    // The server keeps the plan when it notices the end.
    setTimeout(() => router.refresh(), control.signal.aborted ? 600 : 0);
  };
  return (
    <div className="row">
      <p role="status">{words}</p>
      {isRunning ? (
        <button className="btn plain slim" type="button" onClick={() => stop.current?.abort()}>
          Stop here
        </button>
      ) : (
        <button className="btn plain slim" type="button" onClick={() => void run()}>
          Look for better, half a minute
        </button>
      )}
    </div>
  );
}

async function follow(
  month: string,
  signal: AbortSignal,
  tell: (news: ImproveNews) => void,
): Promise<void> {
  const answer = await fetch(`/slate/propose/${month.slice(0, 7)}/improve`, {
    method: "POST",
    headers: { "content-type": "application/json" },
    body: "{}",
    signal,
  });
  const reader = answer.body?.pipeThrough(new TextDecoderStream()).getReader();
  if (!answer.ok || !reader) throw new Error("no answer");
  let rest = "";
  for (let part = await reader.read(); !part.done; part = await reader.read()) {
    const lines = (rest + part.value).split("\n");
    rest = lines.pop() ?? "";
    for (const line of lines) tell(JSON.parse(line) as ImproveNews);
  }
}
