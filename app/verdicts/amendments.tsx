import type { VerdictDay } from "#lib/use-cases/load-verdict-day.ts";
import { EATEN } from "./person.ts";
import styles from "./verdicts.module.css";

/** What was said at first and what was changed later, entry by entry. */
export function Amendments({ amended }: { readonly amended: VerdictDay["amended"] }) {
  if (amended.length === 0) return null;
  return (
    <details className={`sheet ${styles.amended}`}>
      <summary>
        Amended later: {amended.length} {amended.length === 1 ? "verdict" : "verdicts"}
      </summary>
      <ul>
        {amended.map(({ item, child, entries }) => (
          <li key={`${item} ${child}`}>
            <strong>
              {item}, {child}
            </strong>
            <ol>
              {entries.map(({ at, change }) => (
                <li key={at.toISOString()} className="small">
                  {Object.entries(change)
                    .map(([field, value]) => said(field, value))
                    .join(", ")}
                </li>
              ))}
            </ol>
          </li>
        ))}
      </ul>
    </details>
  );
}

function said(field: string, value: string | number | null): string {
  if (field === "eaten")
    return value === null ? "eaten: taken back" : `${EATEN[Number(value)]} eaten`;
  if (field === "face")
    return value === null ? "face: taken back" : `face ${Math.round(Number(value))} of 100`;
  return value === "" || value === null ? `${field}: taken back` : `${field}: “${value}”`;
}
