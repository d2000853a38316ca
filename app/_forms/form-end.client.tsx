"use client";

import Link from "next/link";
import { ProblemLine } from "#app/_forms/problem-line.tsx";

/** The end of a form: save, or leave; and what stood in the way. */
export function FormEnd({
  label,
  back,
  isSaving,
  problem,
}: {
  readonly label: string;
  /** Where leaving without saving goes. */
  readonly back: string;
  readonly isSaving: boolean;
  readonly problem: string | undefined;
}) {
  return (
    <div>
      <div className="row">
        <button className="btn" type="submit" disabled={isSaving}>
          {isSaving ? "Saving …" : label}
        </button>
        <Link className="btn plain" href={back} prefetch={false}>
          Leave it as it was
        </Link>
      </div>
      <ProblemLine problem={problem} />
    </div>
  );
}
