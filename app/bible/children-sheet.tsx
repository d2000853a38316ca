import Link from "next/link";
import { day, monthTitle } from "#lib/calendar/index.ts";
import { allergenWords, severityWords } from "./words.ts";
import type { BibleView } from "#lib/use-cases/bible/load-bible.ts";
import { retireChildAction } from "./actions.ts";
import styles from "./bible.module.css";
import { SheetFrame } from "./sheet-frame.tsx";
import { SwitchButton } from "./switch-button.client.tsx";

/** The children by their on-screen names, with what each avoids. */
export function ChildrenSheet({ childRecords }: { readonly childRecords: BibleView["children"] }) {
  return (
    <SheetFrame isWide id="children" title="Children" href="/bible/children/new" link="Add a child">
      {childRecords.length === 0 ? (
        <p className="quiet">
          Nobody yet. Portions, verdicts and every warning about allergens begin with a child.
        </p>
      ) : (
        <ul className={styles.rows}>
          {childRecords.map((child) => (
            <li key={child.id}>
              <div>
                <Link className={styles.name} href={`/bible/children/${child.id}`} prefetch={false}>
                  {child.onScreenName}
                </Link>
                <p className="small quiet">{lineOf(child)}</p>
                {child.avoidances.length > 0 && (
                  <ul className={styles.tags} aria-label={`What ${child.onScreenName} avoids`}>
                    {child.avoidances.map((record) => (
                      <li className="tag" key={record.id}>
                        {severityWords(record.avoidance.severity)}: {whatOf(record)}
                      </li>
                    ))}
                  </ul>
                )}
              </div>
              <SwitchButton
                label={child.isRetired ? "Bring back" : "Retire"}
                spoken={`${child.isRetired ? "Bring back" : "Retire"} ${child.onScreenName}`}
                action={retireChildAction}
                input={{ id: child.id, isRetired: !child.isRetired }}
              />
            </li>
          ))}
        </ul>
      )}
    </SheetFrame>
  );
}

type ChildRecord = BibleView["children"][number];

function lineOf(child: ChildRecord): string {
  return [
    ...(child.isRetired ? ["retired from the weeks to come"] : []),
    child.birthMonth === null
      ? "birth month not said"
      : `born ${monthTitle(day(`${child.birthMonth}-01`))}`,
    `portion × ${child.portionFactor}`,
    child.facePoints === null ? "faces by age" : `${child.facePoints} faces`,
    ...(child.avoidances.length === 0 ? ["avoids nothing on record"] : []),
  ].join(", ");
}

function whatOf({ avoidance, what, note }: ChildRecord["avoidances"][number]): string {
  const name =
    "allergen" in avoidance
      ? allergenWords(avoidance.allergen).toLowerCase()
      : "family" in avoidance
        ? `everything of the family ${what}`
        : what;
  return note === "" ? name : `${name} (${note})`;
}
