"use client";

import { useState } from "react";
import type { Colour, Pattern } from "#lib/catalog/index.ts";
import { Face } from "#app/_ui/face.tsx";
import { Tray } from "#app/_ui/tray.tsx";
import { logReactionAction } from "./actions.ts";
import styles from "./verdicts.module.css";

type Item = {
  readonly id: string;
  readonly name: string;
  readonly grams: number;
  readonly colour: Colour;
  readonly pattern: Pattern;
};
type Person = {
  readonly id: string;
  readonly name: string;
  readonly faces: readonly { readonly value: number; readonly word: string }[];
};
type Verdict = {
  readonly itemId: string;
  readonly childId: string;
  readonly eaten: number | null;
  readonly face: number | null;
  readonly quote: string;
  readonly revision: number;
};
type Change = Partial<Pick<Verdict, "eaten" | "face" | "quote">>;

const EATEN = ["none", "¼", "½", "¾", "all"] as const;

/** One child, one item at a time: how much was eaten, which face, what was said. Each tap is kept. */
export function VerdictDesk({
  items,
  people,
  verdicts,
}: {
  readonly items: readonly Item[];
  readonly people: readonly Person[];
  readonly verdicts: readonly Verdict[];
}) {
  const [held, setHeld] = useState(
    () => new Map(verdicts.map((verdict) => [keyOf(verdict.itemId, verdict.childId), verdict])),
  );
  const [childId, setChildId] = useState(people[0]?.id ?? "");
  const [itemId, setItemId] = useState(items[0]?.id ?? "");
  const [waiting, setWaiting] = useState(0);
  const [problem, setProblem] = useState<string>();
  const child = people.find((one) => one.id === childId);
  const item = items.find((one) => one.id === itemId);
  if (!child || !item) return null;

  const verdictOf = (itemOf: string, childOf: string): Verdict =>
    held.get(keyOf(itemOf, childOf)) ?? {
      itemId: itemOf,
      childId: childOf,
      eaten: null,
      face: null,
      quote: "",
      revision: 0,
    };
  const verdict = verdictOf(item.id, child.id);
  const loggedFor = (person: string): number =>
    items.filter((one) => verdictOf(one.id, person).eaten !== null).length;

  const log = async (change: Change): Promise<void> => {
    const before = verdict;
    const key = keyOf(before.itemId, before.childId);
    const put = (next: Verdict): void => {
      setHeld((map) => new Map(map).set(key, next));
    };
    put({ ...before, ...change });
    setWaiting((count) => count + 1);
    const answer = await logReactionAction({
      id: crypto.randomUUID(),
      itemId: before.itemId,
      childId: before.childId,
      baseRevision: before.revision,
      madeAt: new Date().toISOString(),
      change,
    }).catch(() => undefined);
    setWaiting((count) => count - 1);
    if (answer?.kind === "logged") {
      setProblem(undefined);
      setHeld((map) => {
        const now = map.get(key);
        return now ? new Map(map).set(key, { ...now, revision: answer.revision }) : map;
      });
    } else {
      put(before);
      setProblem(
        answer?.kind === "refused"
          ? answer.message
          : "This was not kept: Noonbook did not answer. Tap it again.",
      );
    }
  };

  const next = items[items.indexOf(item) + 1];
  const nextPerson = people[people.indexOf(child) + 1];
  return (
    <div className={styles.desk}>
      <div className={styles.people} role="group" aria-label="Whose verdict">
        {people.map((person) => (
          <button
            key={person.id}
            type="button"
            aria-pressed={person.id === child.id}
            onClick={() => {
              setChildId(person.id);
            }}
          >
            {person.name}
            <span>
              {loggedFor(person.id)} of {items.length} logged
            </span>
          </button>
        ))}
      </div>
      <Tray
        compartments={items.map((one) => ({
          ...one,
          key: one.id,
          eaten: verdictOf(one.id, child.id).eaten ?? undefined,
          mark: one.id === item.id ? "now" : undefined,
        }))}
      />
      <div className="row" role="group" aria-label="Which item">
        {items.map((one) => (
          <button
            className="chip"
            key={one.id}
            type="button"
            aria-pressed={one.id === item.id}
            onClick={() => {
              setItemId(one.id);
            }}
          >
            {one.name}
          </button>
        ))}
      </div>
      <section className="sheet" aria-label={`${item.name}, ${child.name}`}>
        <h2>{item.name}</h2>
        <fieldset className={styles.scale}>
          <legend>How much was eaten?</legend>
          <div>
            {EATEN.map((word, quarters) => (
              <button
                key={word}
                type="button"
                className={styles.pick}
                aria-pressed={verdict.eaten === quarters}
                onClick={() => void log({ eaten: quarters })}
              >
                <Cup left={1 - quarters / 4} />
                {word}
              </button>
            ))}
          </div>
        </fieldset>
        <fieldset className={styles.scale}>
          <legend>How was it, {child.name}?</legend>
          <div>
            {child.faces.map((face) => (
              <button
                key={face.value}
                type="button"
                className={styles.pick}
                aria-pressed={verdict.face === face.value}
                onClick={() => void log({ face: face.value })}
              >
                <Face value={face.value} />
                {face.word}
              </button>
            ))}
          </div>
        </fieldset>
        <Quote
          key={keyOf(item.id, child.id)}
          name={child.name}
          quote={verdict.quote}
          onKeep={(quote) => void log({ quote })}
        />
      </section>
      <p role="status" className={problem ? "rule-error" : "small quiet"}>
        {problem ?? (waiting > 0 ? "Keeping …" : "Everything tapped is kept.")}
      </p>
      {(next ?? nextPerson) && (
        <button
          className="btn"
          type="button"
          onClick={() => {
            if (next) setItemId(next.id);
            else if (nextPerson) {
              setChildId(nextPerson.id);
              setItemId(items[0]?.id ?? "");
            }
          }}
        >
          {next ? `Next: ${next.name}` : `Next: ${nextPerson?.name ?? ""}`}
        </button>
      )}
    </div>
  );
}

/** Kept when the field is left, so that no key stroke waits for the network. */
function Quote({
  name,
  quote,
  onKeep,
}: {
  readonly name: string;
  readonly quote: string;
  readonly onKeep: (quote: string) => void;
}) {
  const [typed, setTyped] = useState(quote);
  return (
    <label>
      In {name}’s words (optional)
      <input
        className="field"
        value={typed}
        maxLength={500}
        onChange={(event) => {
          setTyped(event.target.value);
        }}
        onBlur={() => {
          if (typed.trim() !== quote) onKeep(typed.trim());
        }}
      />
    </label>
  );
}

/** What is left of a portion: told by the level, and by the word under it. */
function Cup({ left }: { readonly left: number }) {
  const top = 4 + 32 * (1 - left);
  return (
    <svg viewBox="0 0 52 40" width="52" height="40" aria-hidden="true">
      <rect
        x="2"
        y="2"
        width="48"
        height="36"
        rx="10"
        fill="var(--sheet)"
        stroke="currentColor"
        strokeWidth="2"
      />
      {left > 0 && (
        <path
          d={`M4 ${top}q11-3 22 0t22 0V28q0 8-8 8H12q-8 0-8-8z`}
          fill="currentColor"
          fillOpacity="0.28"
        />
      )}
      {left === 0 && (
        <path
          d="M14 30h.1M20 33h.1M37 31h.1"
          stroke="currentColor"
          strokeWidth="3"
          strokeLinecap="round"
        />
      )}
    </svg>
  );
}

function keyOf(itemId: string, childId: string): string {
  return `${itemId}:${childId}`;
}
