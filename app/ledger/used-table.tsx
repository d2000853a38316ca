import Link from "next/link";
import { daysAgo, type Day } from "#lib/calendar/index.ts";
import type { UsedLine } from "#lib/use-cases/used-so-far.ts";
import styles from "./ledger.module.css";

const WORDS = {
  Theme: { title: "Themes used", unit: "In weeks" },
  Food: { title: "Foods used", unit: "In lunches" },
} as const;

/**
 * How often themes or foods were on, and when each was last seen; most often first. Foods lead to
 * their path by plain anchors: hundreds of client links would double the page.
 */
export function UsedTable({
  what,
  lines,
  today,
  all,
}: {
  readonly what: "Theme" | "Food";
  readonly lines: readonly UsedLine[];
  readonly today: Day;
  /** Where all of them stand, when these are the first. */
  readonly all?: { readonly href: string; readonly count: number };
}) {
  const { title, unit } = WORDS[what];
  return (
    <section className="sheet">
      <h2>{title}</h2>
      <table>
        <thead>
          <tr>
            <th>{what}</th>
            <th className="n">{unit}</th>
            <th className="n">Last seen</th>
          </tr>
        </thead>
        <tbody>
          {lines.map(({ id, name, times, lastOn }) => (
            <tr key={id}>
              <td>{what === "Food" ? <a href={`/ledger/food/${id}`}>{name}</a> : name}</td>
              <td className="n">{times}</td>
              <td className={`n ${styles.last}`}>{daysAgo(lastOn, today)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {lines.length === 0 && <p className="quiet">None in this span.</p>}
      {all && all.count > lines.length && (
        <p className={styles.more}>
          <Link href={all.href} prefetch={false}>
            All {all.count} {what.toLowerCase()}s
          </Link>
        </p>
      )}
    </section>
  );
}
