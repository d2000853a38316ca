import Link from "next/link";
import { Icon } from "#app/_ui/icon.tsx";
import type { ChildSummary } from "#lib/use-cases/load-ledger.ts";
import styles from "./ledger.module.css";

const SIGNS = [
  ["dependable", "check"],
  ["mixed", "wave"],
  ["meeting", "half"],
  ["resting", "moon"],
] as const;

/** One child in short: foods by standing, new foods, and what to try again. */
export function ChildCard({ child }: { readonly child: ChildSummary }) {
  const { id, name, standings, newFoods, tryAgain } = child;
  return (
    <section className="sheet" aria-labelledby={`child-${id}`}>
      <div className={styles.cardHead}>
        <h2 id={`child-${id}`}>{name}</h2>
        <Link className="btn plain slim" href={`/ledger/child/${id}`} prefetch={false}>
          All foods<span className="sr"> of {name}</span>
        </Link>
      </div>
      <ul className={styles.standings}>
        {SIGNS.map(([kind, sign]) => (
          <li key={kind}>
            <strong className="num">{standings[kind]}</strong>
            <span>
              <Icon name={sign} /> {kind}
            </span>
          </li>
        ))}
      </ul>
      <p>
        {newFoods.tried === 0
          ? "No new food in this span."
          : `${newFoods.tried} new ${newFoods.tried === 1 ? "food" : "foods"} met, ${newFoods.stayed} of them dependable by now.`}
      </p>
      {tryAgain.length > 0 && (
        <p>
          <strong>Try again: </strong>
          {tryAgain.map(({ foodId, food }, index) => (
            <span key={foodId}>
              {index > 0 && ", "}
              <Link href={`/ledger/food/${foodId}`} prefetch={false}>
                {food}
              </Link>
            </span>
          ))}
          .
        </p>
      )}
    </section>
  );
}
