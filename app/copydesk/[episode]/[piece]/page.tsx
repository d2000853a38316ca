import Link from "next/link";
import { notFound } from "next/navigation";
import { Day, mediumDay } from "#lib/calendar/index.ts";
import { DRAFT_KINDS } from "#lib/drafts/index.ts";
import { loadPiece } from "#lib/use-cases/load-copy-desk.ts";
import { requestContext } from "#app/_server/context.ts";
import { CopyButton } from "../../copy-button.client.tsx";
import styles from "../../copydesk.module.css";
import { DeskHead } from "../../desk-head.tsx";
import { DraftSheet } from "../../draft-sheet.client.tsx";
import { Guards } from "../../guards.client.tsx";
import { pieceKey } from "../../piece-key.ts";
import { PieceNav } from "../../piece-nav.tsx";

export const metadata = { title: "Copy desk" };

/** One piece: its sentences with their records, and the guards that stand before copying it. */
export default async function PiecePage({
  params,
  searchParams,
}: PageProps<"/copydesk/[episode]/[piece]">) {
  const { episode, piece: name } = await params;
  const monday = Day.safeParse(episode);
  const kind = DRAFT_KINDS.find((one) => one === name);
  if (!monday.success || !kind) notFound();
  const date = Day.safeParse((await searchParams)["day"]);
  const view = await loadPiece(
    await requestContext(),
    monday.data,
    kind,
    date.success ? date.data : undefined,
  );
  if (!view) notFound();
  const { piece } = view;
  const key = pieceKey(monday.data, piece);
  const title = piece.date ? `${piece.name}, ${mediumDay(piece.date)}` : piece.name;
  return (
    <>
      <DeskHead view={view} title={title} path={`/${kind}`}>
        <CopyButton piece={key} name={title} text={piece.body} open={piece.open} />
      </DeskHead>
      <PieceNav view={view} here={kind} lunchId={piece.lunchId} />
      {piece.templateProblem && (
        <p className={styles.note}>
          The template has an error in line {piece.templateProblem.line}:{" "}
          {piece.templateProblem.message}{" "}
          <Link href={`/copydesk/templates/${kind}`}>Open the template</Link>
        </p>
      )}
      <div className={styles.grid}>
        <DraftSheet
          key={`${piece.kind} ${piece.lunchId ?? ""}`}
          title={view.title}
          piece={piece}
          pieceKey={key}
        />
        <aside>
          <Guards
            piece={key}
            checks={piece.checks}
            kept={piece.kept}
            staleCount={
              piece.stale ? Math.max(piece.stale.outdated.length, piece.stale.fresh.length) : 0
            }
          />
          <p className={styles.aside}>
            <Link href={`/copydesk/templates/${kind}`}>Change the template of this piece</Link>
          </p>
        </aside>
      </div>
    </>
  );
}
