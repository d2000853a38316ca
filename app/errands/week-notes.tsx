import { describeGrams, LIFE_CAUTION } from "#lib/shopping/index.ts";
import type { ErrandsView } from "#lib/use-cases/errands/load-errands.ts";
import type { OwedView } from "#lib/use-cases/errands/load-owed.ts";
import sheet from "#app/_ui/one-page.module.css";
import { OwedList } from "./owed-list.client.tsx";
import { WeekPlan } from "./week-plan.client.tsx";
import styles from "./errands.module.css";

/** What the lists do not say: questions, what stock covers, what is left over, what is made at home. */
export function WeekNotes({
  view,
  owed,
}: {
  readonly view: ErrandsView;
  readonly owed: readonly OwedView[];
}) {
  return (
    <div className={styles.notes}>
      <WeekPlan
        view={{
          monday: view.monday,
          proof: view.proof,
          otherTrips: view.otherTrips,
          notTo: view.notTo,
          onlyAt: view.onlyAt,
        }}
      />
      <section className={sheet.box}>
        <h2>Owed</h2>
        <OwedList owed={owed} />
      </section>
      <Note
        title="At home already"
        lines={view.fromStock}
        empty="Nothing on hand is used for this week."
      />
      <Note
        title="Will be left over"
        lines={view.leftovers}
        isLong
        empty="Every pack is used up."
        foot={view.leftovers.length > 0 ? LIFE_CAUTION : undefined}
      />
      <Note
        title="Made at home"
        lines={view.homeMade.map(
          ({ name, grams, days }) => `${name}: ${describeGrams(grams)} for ${days.join(", ")}`,
        )}
        empty="Nothing of the house kitchen is planned."
        foot={
          view.homeMade.length > 0
            ? "Their ingredients are not on these lists: add them by hand."
            : undefined
        }
      />
    </div>
  );
}

/** More lines than this are printed running on. */
const LINES_APART_MAX = 24;

function Note({
  title,
  lines,
  empty,
  foot,
  isLong = false,
}: {
  readonly title: string;
  readonly lines: readonly string[];
  readonly empty: string;
  readonly foot?: string | undefined;
  /** May go on in the next column. */
  readonly isLong?: boolean;
}) {
  return (
    <section className={[sheet.box, isLong && styles.long].filter(Boolean).join(" ")}>
      <h2>{title}</h2>
      {lines.length === 0 ? (
        <p className="small quiet">{empty}</p>
      ) : (
        <ul className={lines.length > LINES_APART_MAX ? styles.dense : undefined}>
          {lines.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      )}
      {foot !== undefined && <p className="small quiet">{foot}</p>}
    </section>
  );
}
