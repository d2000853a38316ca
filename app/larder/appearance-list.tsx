import Link from "next/link";
import { longDay } from "#lib/calendar/index.ts";
import type { Appearance } from "#lib/use-cases/larder/appearances.ts";
import styles from "./larder.module.css";

const EATEN = ["none", "¼", "½", "¾", "all"] as const;

/** What has been and is to be on, latest first: day, episode, how much, what became of it, what was said. */
export function AppearanceList({
  appearances,
  withFood = false,
}: {
  readonly appearances: readonly Appearance[];
  /** Names the food too, where the list is of a trick or a theme. */
  readonly withFood?: boolean;
}) {
  return (
    <ol className={styles.appearances}>
      {appearances.map((one) => (
        <li key={one.itemId}>
          <p>
            <b>{longDay(one.date)}</b>,{" "}
            <Link href={`/slate/week/${one.weekOf}#${one.date}`} prefetch={false}>
              episode {one.episode}, {one.title}
            </Link>
          </p>
          <p className="small quiet">
            {withFood && `${one.food}, `}
            {[one.part, one.amount, ...one.tricks, one.product].filter(Boolean).join(", ")}
            {one.fate === "scrapped" && ` – scrapped: ${one.reason || "no reason noted"}`}
            {one.fate === "stepped-in" && " – stepped in"}
            {one.fate === "planned" && " – planned"}
          </p>
          {one.verdicts.length > 0 && (
            <p className="small">
              {one.verdicts
                .map(
                  ({ child, eaten, quote }) =>
                    `${child} ${eaten === null ? "not seen" : (EATEN[eaten] ?? "")}${quote === "" ? "" : `, “${quote}”`}`,
                )
                .join(" · ")}
            </p>
          )}
        </li>
      ))}
    </ol>
  );
}
