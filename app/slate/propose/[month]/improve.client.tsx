"use client";

import { useRouter } from "next/navigation";
import { useCallback, useEffect, useRef, useState } from "react";
import type { ImproveNews } from "#lib/use-cases/proposal/improve-proposal.ts";
import { proofWords } from "./proof-words.ts";

/**
 * Improves the proposal while the user looks on: how good it is, how good any could be, and a way to stop.
 * Starts by itself where the proposal is fresh; the page around it stays usable and follows.
 */
export function Improve({
  month,
  start,
  isFresh,
}: {
  readonly month: string;
  /** How good the proposal on the page is proven to be. */
  readonly start: string;
  readonly isFresh: boolean;
}) {
  const router = useRouter();
  const [words, setWords] = useState<string>();
  const [isRunning, setRunning] = useState(false);
  const stop = useRef<AbortController>(null);
  useEffect(() => () => stop.current?.abort(), []);
  const run = useCallback(async (): Promise<void> => {
    if (stop.current && !stop.current.signal.aborted) return;
    const control = new AbortController();
    stop.current = control;
    setRunning(true);
    let problem: string | undefined;
    try {
      await follow(month, control.signal, (news) => {
        setWords(proofWords(news));
        if (news.isKept) router.refresh();
      });
    } catch {
      if (!control.signal.aborted)
        problem = "Noonbook did not answer. The proposal stays as it is.";
    }
    const wasStopped = control.signal.aborted;
    control.abort();
    setRunning(false);
    setWords(problem);
    // The server keeps the plan when it notices the end.
    setTimeout(() => router.refresh(), wasStopped ? 600 : 0);
  }, [month, router]);
  useEffect(() => {
    if (!isFresh) return;
    const soon = setTimeout(() => void run(), 0);
    return () => clearTimeout(soon);
  }, [isFresh, run]);
  return (
    <div className="row">
      <p role="status">
        {isRunning && "Looking for better, half a minute at most. "}
        {words ?? start}
      </p>
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
