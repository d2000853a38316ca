"use client";

import Link from "next/link";
import { useState } from "react";
import type { Check } from "#lib/drafts/index.ts";
import { Icon } from "#app/_ui/icon.tsx";
import { ProblemLine } from "#app/_forms/problem-line.tsx";
import { settleFindingAction } from "./actions.ts";
import styles from "./copydesk.module.css";
import type { PieceKey } from "./piece-key.ts";

/** Guards of times that are marked on the page of chapters and files. */
const ON_THE_FILES_PAGE: ReadonlySet<Check["kind"]> = new Set(["chapters", "screen"]);

/** What every guard looked for and found, each finding with its fixes at hand. */
export function Guards({
  piece,
  checks,
  kept,
  staleCount,
}: {
  readonly piece: PieceKey;
  readonly checks: readonly Check[];
  readonly kept: readonly string[];
  /** Sentences that the records no longer hold. */
  readonly staleCount: number;
}) {
  const [problem, setProblem] = useState<string>();
  const settle = async (key: string, fix: number | null): Promise<void> => {
    const state = await settleFindingAction({ ...piece, key, fix }).catch(() => undefined);
    if (!state) setProblem("Noonbook did not answer. Try again.");
    else setProblem(state.kind === "refused" ? state.message : undefined);
  };
  const rows = checks.map((check) => ({
    check,
    open: check.findings.filter(({ key }) => check.level === "stop" || !kept.includes(key)),
  }));
  return (
    <section className="sheet" aria-labelledby="guards">
      <h2 id="guards">Guards</h2>
      <ProblemLine problem={problem} />
      <ul className={styles.guards}>
        {rows
          .flatMap(({ check, open }) => open.map((finding, index) => ({ check, finding, index })))
          .map(({ check, finding, index }) => (
            <li
              key={`${check.kind} ${index} ${finding.key}`}
              className={check.level === "stop" ? styles.bad : styles.look}
            >
              <Icon name={check.level === "stop" ? "stop" : "pencil"} />
              <div>
                <b>
                  {check.level === "stop" ? "Rule broken: " : "Look again: "}
                  {check.title}
                </b>
                <p>{finding.text}</p>
                <div className="row">
                  {finding.fixes.map((fix, at) => (
                    <button
                      className={at === 0 ? "btn slim" : "btn plain slim"}
                      key={fix.label}
                      type="button"
                      onClick={() => void settle(finding.key, at)}
                    >
                      {fix.label}
                    </button>
                  ))}
                  {ON_THE_FILES_PAGE.has(check.kind) && piece.kind !== "board" && (
                    <Link className="btn plain slim" href={`/copydesk/${piece.monday}/files`}>
                      Mend the times
                    </Link>
                  )}
                  {check.level === "look" && (
                    <button
                      className="btn plain slim"
                      type="button"
                      onClick={() => void settle(finding.key, null)}
                    >
                      Keep it
                    </button>
                  )}
                </div>
              </div>
            </li>
          ))}
        {staleCount > 0 && (
          <li className={styles.look}>
            <Icon name="pencil" />
            <div>
              <b>
                Stale: {staleCount} {staleCount === 1 ? "sentence" : "sentences"}
              </b>
              <p>
                Records changed after the draft was written. <a href="#stale">See what changed</a>
              </p>
            </div>
          </li>
        )}
        {rows
          .filter(({ open }) => open.length === 0)
          .map(({ check }) => (
            <li key={check.kind}>
              <Icon name="check" />
              <div>
                <b>{check.title}</b>
                <p>{check.findings.length > 0 ? "Kept by you as it stands." : check.passed}</p>
              </div>
            </li>
          ))}
      </ul>
    </section>
  );
}
