"use client";

import { useState } from "react";
import { Choice } from "#app/_forms/choice.client.tsx";
import { useLarder } from "#app/_forms/use-larder.client.ts";
import { FoodFinder } from "#app/slate/food-finder.client.tsx";
import { LEAVE_OUT, NEW_FOOD } from "#lib/use-cases/past/past.input.ts";
import type { PastMatch } from "#lib/use-cases/past/report-past.ts";
import styles from "../bible.module.css";

const SHOWN_AT_ONCE = 60;

/** Every phrase of the file and the food it is taken for; those that nobody is sure of stand first. */
export function PastMatches({
  matches,
  choices,
  onChoose,
}: {
  readonly matches: readonly PastMatch[];
  readonly choices: Readonly<Record<string, string>>;
  readonly onChoose: (phrase: string, choice: string) => void;
}) {
  const [shown, setShown] = useState(SHOWN_AT_ONCE);
  const [found, setFound] = useState<Readonly<Record<string, string>>>({});
  const larder = useLarder();
  const sorted = [...matches].sort((one, other) => rankOf(one) - rankOf(other));
  if (matches.length === 0) return null;
  return (
    <div>
      <h3>What each phrase is taken for</h3>
      <ul className={styles.rows}>
        {sorted.slice(0, shown).map((match) => (
          <li key={match.phrase}>
            <div>
              <span className={styles.name}>{match.phrase}</span>
              <p className="small quiet">
                {match.why}; {linesOf(match.lines)}
              </p>
            </div>
            <div className={styles.pickFood}>
              <Choice
                label={`${match.phrase} is`}
                options={[
                  ...(match.choice === "" ? [["", "choose …"] as const] : []),
                  ...optionsOf(match, found),
                ]}
                value={choices[match.phrase] ?? match.choice}
                onChange={(event) => {
                  onChoose(match.phrase, event.target.value);
                }}
              />
              {match.choice === "" && (
                <FoodFinder
                  larder={larder}
                  onChoose={(food) => {
                    setFound({ ...found, [food.id]: food.name });
                    onChoose(match.phrase, food.id);
                  }}
                />
              )}
            </div>
          </li>
        ))}
      </ul>
      {matches.length > shown && (
        <button
          className="btn plain slim"
          type="button"
          onClick={() => {
            setShown(shown + SHOWN_AT_ONCE);
          }}
        >
          Show more of {matches.length}
        </button>
      )}
    </div>
  );
}

function rankOf(match: PastMatch): number {
  if (match.choice === "") return 0;
  if (match.why.startsWith("by a spelling")) return 1;
  return match.why.startsWith("by the words") ? 2 : 3;
}

function optionsOf(
  match: PastMatch,
  found: Readonly<Record<string, string>>,
): (readonly [string, string])[] {
  const named = new Map(match.options.map(({ id, name }) => [id, name]));
  for (const [id, name] of match.choice === "" ? Object.entries(found) : []) named.set(id, name);
  return [
    ...named,
    [NEW_FOOD, "a new food of my own"],
    [LEAVE_OUT, "nothing: leave its lines out"],
  ];
}

/** "line 4", "lines 2–6, 9": lines in a row are told together. */
function linesOf(lines: readonly number[]): string {
  const spans: [number, number][] = [];
  for (const line of lines) {
    const last = spans.at(-1);
    if (last?.[1] === line - 1) last[1] = line;
    else spans.push([line, line]);
  }
  const told = spans.map(([from, to]) => (from === to ? String(from) : `${from}–${to}`));
  return `${lines.length === 1 ? "line" : "lines"} ${told.join(", ")}`;
}
