"use client";

import { lazy, Suspense, useRef, useState } from "react";
import styles from "./find-box.module.css";
import { Icon } from "./icon.tsx";

// Every page carries the field; what answers it comes with the first letter.
const FindAnswers = lazy(() => import("./find-answers.client.tsx"));

/** "Has it ever been on?" from any page: a plain search form that answers as one types. */
export function FindBox() {
  const box = useRef<HTMLDetailsElement>(null);
  const [typed, setTyped] = useState("");
  return (
    <details
      className={styles.box}
      ref={box}
      onKeyDown={(event) => {
        if (event.key !== "Escape" || !box.current?.open) return;
        box.current.open = false;
        box.current.querySelector("summary")?.focus();
      }}
      onToggle={() => {
        if (box.current?.open) box.current.querySelector("input")?.focus();
      }}
    >
      <summary>
        <Icon name="search" />
        Find
      </summary>
      <form action="/larder/find" role="search" aria-label="Everything that has been on">
        <label htmlFor="findbox">Has it ever been on?</label>
        <div className="find">
          <input
            className="field"
            id="findbox"
            name="q"
            type="search"
            autoComplete="off"
            maxLength={200}
            value={typed}
            onChange={(event) => {
              setTyped(event.target.value);
            }}
          />
          <button className="btn slim" type="submit">
            Look
          </button>
        </div>
        {typed.trim() !== "" && (
          <Suspense fallback={null}>
            <FindAnswers typed={typed.trim()} />
          </Suspense>
        )}
      </form>
    </details>
  );
}
