"use client";

import Link from "next/link";
import { Fragment, useState } from "react";
import { longDay } from "#lib/calendar/index.ts";
import type { DraftKind } from "#lib/drafts/index.ts";
import type { PieceView } from "#lib/use-cases/piece-of.ts";
import type { RecordView } from "#lib/use-cases/record-view.ts";
import { ThemeTitle } from "#app/_ui/theme-title.tsx";
import styles from "./copydesk.module.css";
import { EditForm } from "./edit-form.client.tsx";
import { OutlineTable } from "./outline-table.tsx";
import type { PieceKey } from "./piece-key.ts";
import { NewerTemplate } from "./newer-template.tsx";
import { paragraphsOf, ShownSentence, type Shown } from "./prose.tsx";
import { StalePanel } from "./stale-panel.tsx";

const LEGEND = [
  ["packed", "what was packed"],
  ["verdict", "a verdict"],
  ["goods", "goods and gifts"],
  ["prep", "prep and minutes"],
] as const;

/** The draft on its sheet: every sentence with its records, and a way to change the words. */
export function DraftSheet({
  title,
  piece,
  pieceKey,
}: {
  readonly title: string;
  readonly piece: PieceView<DraftKind | "board">;
  readonly pieceKey: PieceKey;
}) {
  const [chosen, setChosen] = useState<string>();
  const [isEditing, setEditing] = useState(false);
  const numbers = new Map(piece.records.map((record, index) => [record.id, index + 1]));
  const rests = new Map(piece.records.map((record) => [record.id, record.rests]));
  const stopped = new Set(
    piece.checks
      .filter((check) => check.level === "stop")
      .flatMap((check) => check.findings)
      .flatMap(({ place }) => (place ? [`${place.line} ${place.at}`] : [])),
  );
  const shown: Shown = {
    numberOf: (id) => numbers.get(id) ?? 0,
    restsOn: (id) => rests.get(id),
    isStopped: (line, at) => stopped.has(`${line} ${at}`),
    chosen,
    choose: (id) => {
      setChosen(id === chosen ? undefined : id);
    },
  };
  const record = piece.records.find(({ id }) => id === chosen);
  return (
    <div>
      <section className={`sheet ${styles.draft}`} aria-label="Draft">
        <div className={styles.top}>
          <ThemeTitle name={title} />
          <span className="small quiet num">
            {count(piece.words, "word")}, {count(piece.sentences, "sentence")},{" "}
            {count(piece.records.length, "record")}
          </span>
        </div>
        {piece.stale && <StalePanel piece={pieceKey} stale={piece.stale} />}
        {piece.newerTemplate && <NewerTemplate piece={pieceKey} merge={piece.newerTemplate} />}
        {isEditing ? (
          <EditForm
            piece={pieceKey}
            text={piece.body}
            isEdited={piece.isEdited}
            close={() => {
              setEditing(false);
            }}
          />
        ) : (
          <>
            {piece.kind === "outline" ? (
              <OutlineTable beats={piece.beats} running={piece.running} shown={shown} />
            ) : (
              <div className={styles.prose}>
                {paragraphsOf(piece.lines).map((paragraph) => (
                  <p key={paragraph[0]?.line}>
                    {paragraph.map(({ line, sentences }, index) => (
                      <Fragment key={line}>
                        {index > 0 && <br />}
                        {sentences.map((sentence, at) => (
                          <ShownSentence
                            key={at}
                            sentence={sentence}
                            isStopped={shown.isStopped(line, at)}
                            shown={shown}
                          />
                        ))}
                      </Fragment>
                    ))}
                  </p>
                ))}
                {piece.lines.flat().length === 0 && (
                  <p className="quiet">The records hold nothing for this one yet.</p>
                )}
              </div>
            )}
            <div className={styles.legend}>
              <b>Rests on:</b>
              {LEGEND.map(([kind, words]) => (
                <span className={`${styles.rests} ${styles[kind]}`} key={kind}>
                  {words}
                </span>
              ))}
              <span className="quiet">no line: opinion or house phrase</span>
              {piece.lines.flat().some(({ isOwn }) => isOwn) && (
                <span className={styles.own}>slanted: your own words</span>
              )}
            </div>
            <p className="noprint">
              <button
                className="btn plain"
                type="button"
                onClick={() => {
                  setEditing(true);
                }}
              >
                Change the words
              </button>
            </p>
          </>
        )}
      </section>
      <div aria-live="polite">
        {record && <RecordCard number={shown.numberOf(record.id)} record={record} />}
      </div>
    </div>
  );
}

function RecordCard({ number, record }: { readonly number: number; readonly record: RecordView }) {
  return (
    <section className={`sheet ${styles.record}`}>
      <h3>
        Record {number}: {record.label}
      </h3>
      <dl className="num">
        {record.on && (
          <>
            <dt>Day</dt>
            <dd>{longDay(record.on)}</dd>
          </>
        )}
        {record.rows.map(([name, value], index) => (
          <Fragment key={index}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </Fragment>
        ))}
      </dl>
      <Link className="btn plain slim" href={record.href}>
        Open the record
      </Link>
    </section>
  );
}

function count(number: number, noun: string): string {
  return `${number} ${noun}${number === 1 ? "" : "s"}`;
}
