"use client";

import { useRouter, useSearchParams } from "next/navigation";
import { useRef, useState, useTransition } from "react";
import { Icon } from "#app/_ui/icon.tsx";
import styles from "./larder.module.css";

/** After this pause in typing the table follows, in milliseconds. */
const PAUSE = 120;

/** Narrows the table as one types; without scripts, Enter does. */
export function LarderSearch({ typed }: { readonly typed: string }) {
  const router = useRouter();
  const asked = useSearchParams();
  const [text, setText] = useState(typed);
  const [isLooking, startLooking] = useTransition();
  const waiting = useRef<ReturnType<typeof setTimeout>>(undefined);

  const look = (next: string): void => {
    const query = new URLSearchParams(asked);
    query.delete("page");
    query.delete("show");
    if (next.trim() === "") query.delete("q");
    else query.set("q", next);
    startLooking(() => {
      router.replace(`/larder?${query}`, { scroll: false });
    });
  };

  return (
    <form
      action="/larder"
      role="search"
      aria-label="The Larder"
      onSubmit={(event) => {
        event.preventDefault();
        clearTimeout(waiting.current);
        look(text);
      }}
    >
      <label htmlFor="larder-search">Find a food, product, shop or trick</label>
      <div className={styles.find}>
        <Icon name="search" />
        <input
          className="field"
          id="larder-search"
          name="q"
          type="search"
          autoComplete="off"
          maxLength={120}
          placeholder="cucumber, the greengrocer, star cutter"
          value={text}
          onChange={(event) => {
            const next = event.target.value;
            setText(next);
            clearTimeout(waiting.current);
            waiting.current = setTimeout(() => {
              look(next);
            }, PAUSE);
          }}
        />
      </div>
      <span className="sr" role="status">
        {isLooking ? "Looking" : ""}
      </span>
    </form>
  );
}
