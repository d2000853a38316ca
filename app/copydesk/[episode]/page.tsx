import Link from "next/link";
import { notFound } from "next/navigation";
import { Day, mediumDay } from "#lib/calendar/index.ts";
import { loadPack } from "#lib/use-cases/load-copy-desk.ts";
import type { PieceView } from "#lib/use-cases/piece-view.ts";
import { requestContext } from "#app/_server/context.ts";
import { Icon } from "#app/_ui/icon.tsx";
import { StageTag } from "#app/_ui/stage-tag.tsx";
import { ThemeTitle } from "#app/_ui/theme-title.tsx";
import { CopyButton } from "../copy-button.client.tsx";
import styles from "../copydesk.module.css";
import { DeskHead } from "../desk-head.tsx";
import { pieceHref, pieceKey } from "../piece-key.ts";
import { PieceNav } from "../piece-nav.tsx";

export const metadata = { title: "Copy desk" };

/** Every piece of an episode on one page. */
export default async function Pack({ params }: PageProps<"/copydesk/[episode]">) {
  const monday = Day.safeParse((await params).episode);
  if (!monday.success) notFound();
  const view = await loadPack(await requestContext(), monday.data);
  if (!view) notFound();
  return (
    <>
      <DeskHead view={view} title="Publishing pack">
        <StageTag stage={view.stage} />
      </DeskHead>
      <PieceNav view={view} here="pack" />
      <div className={styles.theme}>
        <ThemeTitle name={view.title} as="p" />
      </div>
      <div className={styles.pack}>
        {view.pieces.map((piece) => (
          <Piece key={`${piece.kind} ${piece.lunchId ?? ""}`} monday={monday.data} piece={piece} />
        ))}
      </div>
    </>
  );
}

function Piece({ monday, piece }: { readonly monday: Day; readonly piece: PieceView }) {
  const name = piece.date ? `${piece.name}, ${mediumDay(piece.date)}` : piece.name;
  const lights = piece.checks.filter((check) => check.findings.length > 0);
  return (
    <section className="sheet" aria-label={name}>
      <div className={styles.top}>
        <h2>
          <Link href={pieceHref(monday, piece)} prefetch={false}>
            {name}
          </Link>
        </h2>
        <span className="small quiet num">
          {piece.kind === "outline" ? `about ${piece.running} min` : `${piece.words} words`}
        </span>
      </div>
      <p className={styles.lights}>
        <Icon name={piece.open > 0 ? "stop" : "check"} />
        {piece.open > 0
          ? `Open: ${lights.map((check) => check.title).join(", ")}`
          : `${piece.checks.length} guards, nothing open`}
      </p>
      {piece.body === "" ? (
        <p className="quiet">The records hold nothing for this one yet.</p>
      ) : (
        <p className={styles.excerpt} tabIndex={0}>
          {piece.body}
        </p>
      )}
      {piece.body !== "" && (
        <div className="row noprint">
          <CopyButton
            piece={pieceKey(monday, piece)}
            name={name}
            text={piece.body}
            open={piece.open}
            isSlim
          />
        </div>
      )}
    </section>
  );
}
