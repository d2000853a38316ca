import Link from "next/link";
import type { CloseWeek } from "#lib/use-cases/load-closest-weeks.ts";
import styles from "./slate.module.css";

/** The earlier weeks that this one is most like, and why. */
export function ClosestWeeks({ weeks }: { readonly weeks: readonly CloseWeek[] }) {
  return (
    <section className={`sheet ${styles.closest}`} aria-label="Closest earlier weeks">
      <h2>Closest earlier weeks</h2>
      {weeks.length === 0 ? (
        <p className="quiet">No earlier week shares a food, family, trick or theme with it.</p>
      ) : (
        <ol>
          {weeks.map(({ monday, title, sentence }) => (
            <li key={monday}>
              <Link href={`/slate/week/${monday}`} prefetch={false}>
                {title}
              </Link>
              <span className="small"> {sentence}</span>
            </li>
          ))}
        </ol>
      )}
    </section>
  );
}
