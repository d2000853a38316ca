"use client";

import { useRouter } from "next/navigation";
import { useState, useTransition } from "react";
import type { FormState } from "#app/_forms/form-state.ts";

/** One press that changes a row of the bible; what stood in the way is said beside it. */
export function SwitchButton({
  label,
  spoken,
  action,
  input,
  isOff = false,
}: {
  readonly label: string;
  /** The whole of it for a screen reader: "Retire Quayside Greens". */
  readonly spoken: string;
  readonly action: (input: unknown) => Promise<FormState>;
  readonly input: Readonly<Record<string, string | boolean>>;
  readonly isOff?: boolean;
}) {
  const router = useRouter();
  const [isBusy, begin] = useTransition();
  const [problem, setProblem] = useState<string>();
  const press = (): void => {
    begin(async () => {
      const state = await action(input).catch(() => undefined);
      if (state?.kind === "saved") {
        setProblem(undefined);
        if (state.href) router.push(state.href);
      } else {
        setProblem(
          state?.kind === "refused" ? state.message : "Noonbook did not answer. Try again.",
        );
      }
    });
  };
  return (
    <>
      <button
        className="btn plain slim"
        type="button"
        aria-label={spoken}
        disabled={isBusy || isOff}
        onClick={press}
      >
        {label}
      </button>
      {problem && (
        <span className="rule-error" role="alert">
          {problem}
        </span>
      )}
    </>
  );
}
