import { format } from "date-fns";
import { nearestFace, type FacePoints } from "#lib/reactions/index.ts";
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
        {amended.map(({ item, child, facePoints, entries }) => (
          <li key={`${item} ${child}`}>
            <strong>
              {item}, {child}
            </strong>
            <ol>
              {entries.map(({ at, change }) => (
                <li key={at.toISOString()} className="small">
                  {Object.entries(change)
                    .map(([field, value]) => said(field, value, facePoints))
                    .join(", ")}
                  <span className="quiet">, {format(at, "d MMM, HH:mm")}</span>
                </li>
              ))}
            </ol>
          </li>
        ))}
      </ul>
    </details>
  );
}

function said(field: string, value: string | number | null, points: FacePoints): string {
  if (field === "eaten")
    return value === null ? "eaten: taken back" : `${EATEN[Number(value)]} eaten`;
  if (field === "face")
    return value === null
      ? "face: taken back"
      : `face “${nearestFace(Number(value), points).word.toLowerCase()}”`;
  return value === "" || value === null ? `${field}: taken back` : `${field}: “${value}”`;
}
