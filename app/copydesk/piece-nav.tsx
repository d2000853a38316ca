import Link from "next/link";
import { shortDay } from "#lib/calendar/index.ts";
import { DRAFT_KINDS, DRAFT_NAMES, type DraftKind } from "#lib/drafts/index.ts";
import type { CopyDeskView } from "#lib/use-cases/load-copy-desk.ts";
import styles from "./copydesk.module.css";

/** The pieces of an episode; on a lunch post also its days. */
export function PieceNav({
  view,
  here,
  lunchId,
}: {
  readonly view: CopyDeskView;
  readonly here: DraftKind | "pack" | "files";
  readonly lunchId?: string | null;
}) {
  const base = `/copydesk/${view.monday}`;
  return (
    <nav className={`${styles.pieces} noprint`} aria-label="Pieces">
      <ul>
        <li>
          <Link href={base} aria-current={here === "pack" ? "page" : undefined} prefetch={false}>
            Whole pack
          </Link>
        </li>
        {DRAFT_KINDS.map((kind) => (
          <li key={kind}>
            <Link
              href={`${base}/${kind}`}
              aria-current={here === kind ? "page" : undefined}
              prefetch={false}
            >
              {DRAFT_NAMES[kind]}
            </Link>
          </li>
        ))}
        <li>
          <Link
            href={`${base}/files`}
            aria-current={here === "files" ? "page" : undefined}
            prefetch={false}
          >
            Chapters and files
          </Link>
        </li>
      </ul>
      {here === "lunch-post" && view.days.length > 1 && (
        <ul>
          {view.days.map((day) => (
            <li key={day.lunchId}>
              <Link
                href={`${base}/lunch-post?day=${day.date}`}
                aria-current={day.lunchId === lunchId ? "true" : undefined}
                prefetch={false}
              >
                {shortDay(day.date)}
              </Link>
            </li>
          ))}
        </ul>
      )}
    </nav>
  );
}
