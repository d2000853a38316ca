"use client";

import { useState } from "react";
import { Field } from "#app/_forms/field.client.tsx";

/**
 * A line of words that is kept when it is left, so that no key stroke waits for the network. `check` says
 * what is wrong with it: then it stays as typed, with that beside it.
 */
export function Words({
  label,
  kept,
  most,
  inputMode,
  check = () => undefined,
  onKeep,
}: {
  readonly label: string;
  readonly kept: string;
  readonly most: number;
  readonly inputMode?: "decimal";
  readonly check?: (words: string) => string | undefined;
  readonly onKeep: (words: string) => void;
}) {
  // Undefined while nothing is being typed: then what is kept shows, also when another phone changed it.
  const [typed, setTyped] = useState<string>();
  const [problem, setProblem] = useState<string>();
  return (
    <Field
      label={label}
      value={typed ?? kept}
      maxLength={most}
      inputMode={inputMode}
      enterKeyHint="done"
      autoComplete="off"
      error={problem}
      onChange={(event) => {
        setTyped(event.target.value);
        setProblem(undefined);
      }}
      onKeyDown={(event) => {
        if (event.key === "Enter") event.currentTarget.blur();
      }}
      onBlur={() => {
        if (typed === undefined) return;
        const words = typed.trim();
        const wrong = words === kept ? undefined : check(words);
        setProblem(wrong);
        if (wrong !== undefined) return;
        if (words !== kept) onKeep(words);
        setTyped(undefined);
      }}
    />
  );
}
