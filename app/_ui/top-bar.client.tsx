"use client";

import Link from "next/link";
import { usePathname } from "next/navigation";
import { WaitingFlag } from "#app/verdicts/waiting-flag.client.tsx";
import { FindBox } from "./find-box.client.tsx";
import { TinMark } from "./tin-mark.tsx";

/** The rooms, in the order of the week's work. A room is listed once its page stands. */
const ROOMS = [
  ["/slate", "Slate"],
  ["/callsheet", "Call sheet"],
  ["/errands", "Errands"],
  ["/mise", "Mise"],
  ["/verdicts", "Verdicts"],
  ["/copydesk", "Copy desk"],
  ["/larder", "Larder"],
  ["/ledger", "Ledger"],
  ["/bible", "Series bible"],
] as const;

/** The lid of the tin: the mark, the rooms, and whose data this is. */
export function TopBar({
  seriesName,
  isDemo,
}: {
  readonly seriesName: string | undefined;
  readonly isDemo: boolean;
}) {
  const path = usePathname();
  return (
    <div className="top">
      <Link className="mark" href="/">
        <TinMark />
        Noonbook
      </Link>
      {seriesName !== undefined && (
        <nav aria-label="Main">
          <ul>
            {ROOMS.map(([href, name]) => (
              <li key={href}>
                <Link
                  href={href}
                  aria-current={path.startsWith(href) ? "page" : undefined}
                  prefetch={false}
                >
                  {name}
                </Link>
              </li>
            ))}
          </ul>
        </nav>
      )}
      {seriesName !== undefined && <FindBox key={path} />}
      <WaitingFlag path={path} />
      {isDemo && (
        <p className="demo">
          <span>Demo data: {seriesName}</span>
          <Link className="btn plain slim" href="/welcome" prefetch={false}>
            Start my own
          </Link>
        </p>
      )}
    </div>
  );
}
