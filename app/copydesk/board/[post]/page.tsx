import Link from "next/link";
import { notFound } from "next/navigation";
import { loadBoardPost } from "#lib/use-cases/keep-board-post.ts";
import { requestContext } from "#app/_server/context.ts";
import { PageHead } from "#app/_ui/page-head.tsx";
import { CopyButton, CopyPlain } from "../../copy-button.client.tsx";
import styles from "../../copydesk.module.css";
import { DraftSheet } from "../../draft-sheet.client.tsx";
import { Guards } from "../../guards.client.tsx";
import { PostForm } from "../post-form.client.tsx";

export const metadata = { title: "Board post" };

/** A post of the board that is kept: its sentences with their records, its guards, and its mark. */
export default async function BoardPost({ params }: PageProps<"/copydesk/board/[post]">) {
  const { post } = await params;
  const context = await requestContext();
  const view = await loadBoardPost(context, post);
  if (!view) notFound();
  const { piece, publishedOn, correction } = view;
  const key = { kind: "board", post, revision: piece.revision } as const;
  const stale = piece.stale ? Math.max(piece.stale.outdated.length, piece.stale.fresh.length) : 0;
  return (
    <>
      <PageHead kicker="Copy desk, community board" title="Board post">
        <Link className="btn plain" href="/copydesk/board" prefetch={false}>
          All board posts
        </Link>
        <CopyButton piece={key} name="the post" text={piece.body} open={piece.open} />
      </PageHead>
      {correction !== "" && (
        <section className={`sheet ${styles.correction}`} aria-label="Correction note">
          <h2>Changed after it was published</h2>
          <p className={styles.preview}>{correction}</p>
          {piece.checks.every((check) => check.level !== "stop" || check.findings.length === 0) && (
            <CopyPlain name="the correction" text={correction} />
          )}
        </section>
      )}
      <div className={styles.grid}>
        <DraftSheet key={post} title="For the board" piece={piece} pieceKey={key} />
        <aside>
          <Guards piece={key} checks={piece.checks} kept={piece.kept} staleCount={stale} />
          <section className={`sheet ${styles.after}`} aria-label="Publishing">
            <h2>Publishing</h2>
            <PostForm
              post={post}
              revision={piece.revision}
              today={context.today}
              publishedOn={publishedOn}
            />
          </section>
        </aside>
      </div>
    </>
  );
}
