"use client";

import { useState } from "react";
import type { PastReport } from "#lib/use-cases/past/report-past.ts";
import styles from "../bible.module.css";

const SHOWN_AT_ONCE = 100;

/** Every error and doubt by its line, a hundred at a time. */
export function PastNotes({ notes }: { readonly notes: PastReport["notes"] }) {
  const [shown, setShown] = useState(SHOWN_AT_ONCE);
  if (notes.length === 0) return null;
  return (
    <div
      className={styles.scroll}
      role="region"
      aria-label="Errors and doubts by line"
      tabIndex={0}
    >
      <table>
        <thead>
          <tr>
            <th className="n">Line</th>
            <th>Kind</th>
            <th>What</th>
          </tr>
        </thead>
        <tbody>
          {notes.slice(0, shown).map(({ line, kind, message }, index) => (
            <tr key={index}>
              <td className="n">{line}</td>
              <td>
                {kind === "error" ? (
                  <span className="tag broken">error</span>
                ) : (
                  <span className="tag">doubt</span>
                )}
              </td>
              <td>{message}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {notes.length > shown && (
        <button
          className="btn plain slim"
          type="button"
          onClick={() => {
            setShown(shown + SHOWN_AT_ONCE);
          }}
        >
          Show more of {notes.length}
        </button>
      )}
    </div>
  );
}
