import Link from "next/link";
import { notFound } from "next/navigation";
import { Day } from "#lib/calendar/index.ts";
import { loadFiles, type FilesView } from "#lib/use-cases/load-files.ts";
import { requestContext } from "#app/_server/context.ts";
import { Icon } from "#app/_ui/icon.tsx";
import { CopyPlain } from "../../copy-button.client.tsx";
import styles from "../../copydesk.module.css";
import { DeskHead } from "../../desk-head.tsx";
import { PieceNav } from "../../piece-nav.tsx";
import { TimesForm } from "../../times-form.client.tsx";

export const metadata = { title: "Chapters and files" };

/** Chapters, on-screen time, and every file an episode is published with. */
export default async function Files({ params }: PageProps<"/copydesk/[episode]/files">) {
  const monday = Day.safeParse((await params).episode);
  if (!monday.success) notFound();
  const view = await loadFiles(await requestContext(), monday.data);
  if (!view) notFound();
  return (
    <>
      <DeskHead view={view} title="Chapters and files" path="/files" />
      <PieceNav view={view} here="files" />
      <div className={styles.halves}>
        <section className="sheet">
          <h2>Times</h2>
          <p className="small quiet">
            {view.isMarked
              ? "As you marked them in the finished episode."
              : "Estimated from the outline at your speaking rate; mark them once the cut is locked."}
          </p>
          {view.problems.map((problem) => (
            <p className={styles.lights} key={problem}>
              <Icon name="pencil" />
              {problem}
            </p>
          ))}
          <TimesForm
            key={view.revision}
            monday={monday.data}
            revision={view.revision}
            runtime={view.runtime}
            chapters={view.chapters}
            screen={view.children}
          />
        </section>
        <div className={styles.stack}>
          <Shares view={view} />
          {view.ease !== undefined && view.grade !== undefined && (
            <section className="sheet">
              <h2>How the description reads</h2>
              <p className="num">
                Reading ease {view.ease.toFixed(0)} (100 is very easy), grade{" "}
                {Math.max(0, view.grade).toFixed(1)}.
              </p>
            </section>
          )}
        </div>
      </div>
      <div className={`${styles.pack} ${styles.chosen}`}>
        {view.files.map((file) => (
          <section className="sheet" aria-label={file.name} key={file.fileName}>
            <h2>{file.name}</h2>
            <pre className={styles.file} tabIndex={0}>
              {file.text}
            </pre>
            {file.open.length > 0 ? (
              <HeldBack file={file} />
            ) : (
              <>
                <CopyPlain name={file.name} text={file.text} />
                <p className="noprint">
                  <a
                    download={file.fileName}
                    href={`data:${file.type};charset=utf-8,${encodeURIComponent(file.text)}`}
                  >
                    Save {file.fileName}
                  </a>
                </p>
              </>
            )}
          </section>
        ))}
      </div>
    </>
  );
}

/** Why a file cannot be taken yet, and the way to mend it. */
function HeldBack({ file }: { readonly file: FilesView["files"][number] }) {
  return (
    <>
      {file.open.map((text) => (
        <p className="rule-error" key={text}>
          {text}
        </p>
      ))}
      <p className="noprint">
        <Link className="btn plain slim" href={file.mendHref} prefetch={false}>
          Mend it<span className="sr"> for {file.name}</span>
        </Link>
      </p>
    </>
  );
}

function Shares({ view }: { readonly view: FilesView }) {
  return (
    <section className="sheet">
      <h2>On screen</h2>
      {view.shares.length === 0 && (
        <p className="quiet">No on-screen time is noted for this episode yet.</p>
      )}
      {view.shares.map((share) => (
        <p className={`${styles.lights} num`} key={share.name}>
          <Icon name={share.beyond === null ? "check" : "pencil"} />
          {share.name}: {Math.round(share.seconds)} s, {share.percent.toFixed(0)} %
          {share.beyond !== null && `, past the ${share.beyond} % your note names`}
        </p>
      ))}
      <p className="small quiet">
        {view.lawNote === ""
          ? "Some places have rules on children in paid video. Note yours in the Series bible."
          : `Your note: ${view.lawNote}`}{" "}
        A count, not legal advice.
      </p>
    </section>
  );
}
