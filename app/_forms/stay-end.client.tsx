"use client";

import type { ReactNode } from "react";
import { ProblemLine } from "#app/_forms/problem-line.tsx";

/** The end of a form that stays where it is: what else can be done, save, and what came of it. */
export function StayEnd({
  label,
  isPlain = false,
  isSaving,
  status,
  problem,
  children,
}: {
  readonly label: string;
  /** One of several forms of a page, and not the first of them. */
  readonly isPlain?: boolean;
  readonly isSaving: boolean;
  readonly status: string;
  readonly problem: string | undefined;
  readonly children?: ReactNode;
}) {
  return (
    <>
      <div className="row">
        {children}
        <button className={isPlain ? "btn plain" : "btn"} type="submit" disabled={isSaving}>
          {isSaving ? "Saving …" : label}
        </button>
        <span role="status">{status}</span>
      </div>
      <ProblemLine problem={problem} />
    </>
  );
}
