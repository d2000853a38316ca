import Link from "next/link";
import { notFound } from "next/navigation";
import { Day, mediumDay, shortDay } from "#lib/calendar/index.ts";
import { loadPack } from "#lib/use-cases/load-copy-desk.ts";
import type { PieceView } from "#lib/use-cases/piece-of.ts";
import { requestContext } from "#app/_server/context.ts";
import { Icon } from "#app/_ui/icon.tsx";
import { StageTag } from "#app/_ui/stage-tag.tsx";
import { ThemeTitle } from "#app/_ui/theme-title.tsx";
import { Tray } from "#app/_ui/tray.tsx";
import { CopyButton, CopyPlain } from "../copy-button.client.tsx";
import styles from "../copydesk.module.css";
import { DeskHead } from "../desk-head.tsx";
import { pieceHref, pieceKey } from "../piece-key.ts";
import { PieceNav } from "../piece-nav.tsx";
import { Promises } from "../promises.client.tsx";
import { PublishForm } from "../publish-form.client.tsx";

export const metadata = { title: "Copy desk" };

/** Every piece of an episode on one page. */
export default async function Pack({ params }: PageProps<"/copydesk/[episode]">) {
  const monday = Day.safeParse((await params).episode);
  if (!monday.success) notFound();
  const context = await requestContext();
  const view = await loadPack(context, monday.data);
  if (!view) notFound();
  return (
    <>
      <DeskHead view={view} title="Publishing pack">
        <Link className="btn plain" href="/copydesk/board" prefetch={false}>
          Board posts
        </Link>
        <Link className="btn plain" href="/copydesk/templates" prefetch={false}>
          Templates
        </Link>
        <StageTag stage={view.stage} />
      </DeskHead>
      <PieceNav view={view} here="pack" />
      <div className={styles.theme}>
        <ThemeTitle name={view.title} as="p" />
      </div>
      {view.correction !== "" && (
        <section className={`sheet ${styles.correction}`} aria-label="Correction note">
          <h2>Changed after it was published</h2>
          <p className={styles.preview}>{view.correction}</p>
          {view.correctionStops.map((text) => (
            <p className="rule-error" key={text}>
              {text}
            </p>
          ))}
          {view.correctionStops.length === 0 && (
            <CopyPlain name="the correction" text={view.correction} />
          )}
        </section>
      )}
      <section className={styles.sheetOfFive} aria-label="Contact sheet">
        {view.trays.map((tray) => (
          <figure key={tray.date}>
            <Tray compartments={tray.items.map((item) => ({ ...item, key: item.id }))} />
            <figcaption className="small">
              <b>{shortDay(tray.date)}</b>
              {tray.angle && `, ${tray.angle}`}
            </figcaption>
          </figure>
        ))}
      </section>
      <div className={styles.pack}>
        <section className="sheet noprint" aria-label="Publishing">
          <h2>Publishing</h2>
          <PublishForm
            monday={monday.data}
            revision={view.revision}
            today={context.today}
            publishedOn={view.publishedOn}
            url={view.url}
          />
        </section>
        <section className="sheet" aria-label="Owed to viewers">
          <h2>Owed to viewers</h2>
          <Promises promises={view.promises} today={context.today} />
        </section>
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
          {piece.kind === "outline" ? `runs about ${piece.running}` : `${piece.words} words`}
        </span>
      </div>
      <p className={styles.lights}>
        <Icon name={piece.open > 0 ? "stop" : "check"} />
        {piece.open > 0
          ? `Open: ${lights.map((check) => check.title).join(", ")}`
          : `${piece.checks.length} guards, nothing open`}
      </p>
      {piece.open > 0 && (
        <p className="noprint">
          <Link className="btn plain slim" href={pieceHref(monday, piece)} prefetch={false}>
            See and mend<span className="sr"> {name}</span>
          </Link>
        </p>
      )}
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
