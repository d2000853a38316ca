import Link from "next/link";
import type { ReactNode } from "react";
import { addDays, daySpan, mediumDay, shortDay } from "#lib/calendar/index.ts";
import type { CopyDeskView } from "#lib/use-cases/load-copy-desk.ts";
import { PageHead } from "#app/_ui/page-head.tsx";
import styles from "./copydesk.module.css";

/** The head of a copy-desk page: which episode, what piece, and the weeks beside it. */
export function DeskHead({
  view,
  title,
  path = "",
  children,
}: {
  readonly view: CopyDeskView;
  readonly title: string;
  /** Where the neighbouring weeks open. */
  readonly path?: string;
  readonly children?: ReactNode;
}) {
  const week = daySpan(view.monday, addDays(view.monday, 4));
  return (
    <>
      <PageHead kicker={`Copy desk, Ep ${view.number}, ${week}`} title={title}>
        {view.before && (
          <Link className="btn plain" href={`/copydesk/${view.before}${path}`} prefetch={false}>
            Week of {shortDay(view.before)}
          </Link>
        )}
        {view.after && (
          <Link className="btn plain" href={`/copydesk/${view.after}${path}`} prefetch={false}>
            Week of {shortDay(view.after)}
          </Link>
        )}
        {children}
      </PageHead>
      <p className={styles.printed}>
        Episode {view.number}, {view.title}, {week}
      </p>
      {view.untold.length > 0 && (
        <p className={`${styles.note} noprint`}>
          {view.untold.map(mediumDay).join(", ")}: the lid was never shut, so nothing is told of{" "}
          {view.untold.length === 1 ? "that day" : "those days"}.{" "}
          <Link href={`/callsheet/${view.untold[0] ?? ""}`}>Open the call sheet</Link>
        </p>
      )}
    </>
  );
}
