"use client";

import { useEffect, useState } from "react";
import { z } from "zod";
import styles from "./find-box.module.css";

const Answers = z.object({
  answers: z.array(
    z.object({ kind: z.string(), id: z.string(), name: z.string(), words: z.string() }),
  ),
});
type Answers = z.infer<typeof Answers>["answers"];

/** What the records say about the name typed so far; asked anew at each keystroke. */
export default function FindAnswers({ typed }: { readonly typed: string }) {
  const [answers, setAnswers] = useState<Answers>();
  const [hasFailed, setHasFailed] = useState(false);
  useEffect(() => {
    const asking = new AbortController();
    ask(typed, asking.signal).then(
      (found) => {
        setAnswers(found);
        setHasFailed(false);
      },
      () => {
        if (!asking.signal.aborted) setHasFailed(true);
      },
    );
    return () => {
      asking.abort();
    };
  }, [typed]);
  if (hasFailed)
    return (
      <p className="rule-error" role="alert">
        Noonbook did not answer. Press Look to try again.
      </p>
    );
  return (
    <>
      <ul className={styles.answers}>
        {answers?.map(({ kind, id, name, words }) => (
          <li key={`${kind} ${id}`}>
            <a href={`/larder/find?${new URLSearchParams({ q: typed, kind, id })}`}>
              {name}
              <span className="small quiet">
                {kind}, {words}
              </span>
            </a>
          </li>
        ))}
      </ul>
      <p className="small quiet" role="status">
        {answers?.length === 0 ? "Nothing goes by that name." : ""}
      </p>
    </>
  );
}

async function ask(typed: string, signal: AbortSignal): Promise<Answers> {
  const query = new URLSearchParams({ q: typed });
  const response = await fetch(`/larder/find/answers?${query}`, { signal });
  if (!response.ok) throw new Error(`The search answered ${response.status}`);
  return Answers.parse(await response.json()).answers;
}
