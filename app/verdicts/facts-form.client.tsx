"use client";

import type { DayFacts } from "#lib/reactions/index.ts";
import { Words } from "./words.client.tsx";
import styles from "./verdicts.module.css";

const LETTERS_MOST = 1000;
const MINUTES_MOST = 600;

/** The quick facts of the day: minutes it took, what was hard, what the camera missed. */
export function FactsForm({
  facts,
  isWaiting,
  onSay,
}: {
  readonly facts: DayFacts;
  readonly isWaiting: boolean;
  readonly onSay: (change: Partial<DayFacts>) => void;
}) {
  return (
    <section className={`sheet ${styles.facts}`} aria-labelledby="facts">
      <h2 id="facts">Facts of the day</h2>
      <Words
        label="Minutes it took (optional)"
        inputMode="decimal"
        kept={facts.minutes === null ? "" : String(facts.minutes)}
        most={12}
        check={minutesProblem}
        onKeep={(words) => {
          onSay({ minutes: words === "" ? null : minutesOf(words) });
        }}
      />
      <Words
        label="What was hard (optional)"
        kept={facts.hard}
        most={LETTERS_MOST}
        onKeep={(hard) => {
          onSay({ hard });
        }}
      />
      <Words
        label="Pick-ups: what the camera missed (optional)"
        kept={facts.pickups}
        most={LETTERS_MOST}
        onKeep={(pickups) => {
          onSay({ pickups });
        }}
      />
      <p className="small quiet" role="status">
        {isWaiting ? "Kept on this phone, waits to be sent." : "Kept as soon as you leave a field."}
      </p>
    </section>
  );
}

function minutesOf(words: string): number {
  return Number(words.replace(",", "."));
}

/** The server's own checks, told before anything is sent. */
function minutesProblem(words: string): string | undefined {
  const minutes = minutesOf(words);
  if (Number.isNaN(minutes)) return "Write the minutes as a number.";
  if (minutes < 0) return "Minutes cannot be below zero.";
  return minutes > MINUTES_MOST ? "That is more than a morning." : undefined;
}
