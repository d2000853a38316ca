import Link from "next/link";
import { mediumDay, mondayOf, type Day } from "#lib/calendar/index.ts";
import { PageHead } from "./page-head.tsx";

/** What a day's page says when nothing is pencilled for it. */
export function NoLunch({ room, date }: { readonly room: string; readonly date: Day }) {
  return (
    <>
      <PageHead kicker={room} title={`No lunch on ${mediumDay(date)}`} />
      <section className="sheet">
        <p>Nothing is pencilled for this day: it may be a day off, or the week is still empty.</p>
        <p>
          <Link className="btn" href={`/slate/${mondayOf(date).slice(0, 7)}`}>
            Open the slate
          </Link>
        </p>
      </section>
    </>
  );
}
