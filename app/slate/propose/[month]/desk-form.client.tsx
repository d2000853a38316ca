"use client";

import { useActionState, type ReactNode } from "react";
import { changeProposalAction } from "./actions.ts";

/** A form of one step on the desk; sent as it is when there is no script. A refusal is read out. */
export function DeskForm({
  step,
  month,
  fields = {},
  className,
  children,
}: {
  readonly step: string;
  readonly month: string;
  readonly fields?: Readonly<Record<string, string>>;
  readonly className?: string | undefined;
  readonly children: ReactNode;
}) {
  const [state, send, isSending] = useActionState(changeProposalAction, null);
  const words =
    state?.kind === "refused"
      ? state.message
      : state?.kind === "invalid"
        ? Object.values(state.fields)[0]
        : undefined;
  return (
    <form action={send} className={className} aria-busy={isSending}>
      <input type="hidden" name="step" value={step} />
      <input type="hidden" name="month" value={month} />
      {Object.entries(fields).map(([name, value]) => (
        <input key={name} type="hidden" name={name} value={value} />
      ))}
      {children}
      {words !== undefined && (
        <p role="alert" className="small">
          {words}
        </p>
      )}
    </form>
  );
}
