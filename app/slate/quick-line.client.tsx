"use client";

import { useId, useState } from "react";
import type { QuickProposal } from "#lib/use-cases/larder/read-quick-line.ts";
import type { LarderState } from "#app/_forms/use-larder.client.ts";
import { titled, type Line } from "./compose-line.ts";
import { readQuickLineAction, teachAliasAction } from "./quick-actions.ts";
import { QuickRow, type QuickChoice } from "./quick-row.client.tsx";
import styles from "./slate.module.css";

const NO_ANSWER = "Noonbook did not answer. What you typed is still here: try again.";

/**
 * A whole lunch in one field. Reading it takes nothing: each item is shown to be confirmed or
 * corrected, and a corrected food teaches its Larder that name.
 */
export function QuickLine({
  larder,
  parts,
  onTake,
}: {
  readonly larder: LarderState;
  readonly parts: readonly string[];
  readonly onTake: (lines: readonly Omit<Line, "key">[]) => void;
}) {
  const id = useId();
  const [typed, setTyped] = useState("");
  const [choices, setChoices] = useState<readonly QuickChoice[]>([]);
  const [problem, setProblem] = useState<string>();
  const [status, setStatus] = useState("");

  const read = async (): Promise<void> => {
    setStatus("Reading …");
    const state = await readQuickLineAction({ line: typed }).catch(() => undefined);
    setStatus("");
    if (state?.kind !== "read") {
      const told = state?.kind === "invalid" ? state.fields["line"] : state?.message;
      setProblem(told ?? NO_ANSWER);
      return;
    }
    setProblem(undefined);
    setChoices(state.items.map(choiceOf));
    if (state.items.length === 0) setStatus("Nothing of that could be read as an item.");
  };
  const take = async (): Promise<void> => {
    const taken = choices.filter(({ isTaken, food }) => isTaken && food !== undefined);
    onTake(taken.flatMap((choice) => lineOfChoice(choice) ?? []));
    setChoices([]);
    setTyped("");
    setStatus(await teach(taken));
  };

  return (
    <div className={styles.quick}>
      <label htmlFor={id}>The whole lunch in one line</label>
      <div className="row">
        <input
          className="field"
          id={id}
          autoComplete="off"
          maxLength={600}
          placeholder="oat squares; ¼ cup hummus + cucumber ribbons; 1 clementine each; water"
          aria-describedby={problem ? `${id}-problem` : undefined}
          aria-invalid={problem ? true : undefined}
          value={typed}
          onChange={(event) => {
            setTyped(event.target.value);
          }}
          onKeyDown={(event) => {
            if (event.key !== "Enter") return;
            event.preventDefault();
            void read();
          }}
        />
        <button className="btn plain" type="button" onClick={() => void read()}>
          Read it
        </button>
      </div>
      {problem && (
        <p className="rule-error" id={`${id}-problem`} role="alert">
          {problem}
        </p>
      )}
      {choices.length > 0 && (
        <>
          <ul className={styles.quickRows} aria-label="Read from the line">
            {choices.map((choice, index) => (
              <QuickRow
                key={`${choice.proposal.text}-${index}`}
                choice={choice}
                parts={parts}
                larder={larder}
                onChange={(change) => {
                  setChoices((held) =>
                    held.map((one, at) => (at === index ? { ...one, ...change } : one)),
                  );
                }}
              />
            ))}
          </ul>
          <div className="row">
            <button className="btn plain" type="button" onClick={() => void take()}>
              Put these in the lunch
            </button>
            <button
              className="btn plain"
              type="button"
              onClick={() => {
                setChoices([]);
              }}
            >
              Leave them
            </button>
            <span className="small quiet">Amounts are for a usual portion of one child.</span>
          </div>
        </>
      )}
      <p className="small quiet" role="status">
        {status}
      </p>
    </div>
  );
}

function choiceOf(proposal: QuickProposal): QuickChoice {
  const food = proposal.isKnown ? proposal.foods[0] : undefined;
  return {
    proposal,
    food,
    isTaken: food !== undefined,
    part: proposal.part,
    amount: String(Math.round(proposal.amount * 1000) / 1000),
    unit: proposal.unit,
  };
}

function lineOfChoice({
  food,
  part,
  amount,
  unit,
  proposal,
}: QuickChoice): Omit<Line, "key"> | undefined {
  if (!food) return undefined;
  return {
    ...{ id: "", foodId: food.id, name: titled(food.name), part, amount, unit },
    ...{ shopId: "", tricks: proposal.tricks, shares: {} },
  };
}

/** Teaches every corrected name, and tells which were learned. */
async function teach(taken: readonly QuickChoice[]): Promise<string> {
  const learned: string[] = [];
  for (const { food, proposal } of taken) {
    const isCorrected = food && !(proposal.isKnown && food.id === proposal.foods[0]?.id);
    if (!isCorrected || proposal.phrase === "") continue;
    const state = await teachAliasAction({ foodId: food.id, phrase: proposal.phrase }).catch(
      () => undefined,
    );
    if (state?.kind === "taught" && state.alias !== null)
      learned.push(`“${state.alias}” means ${food.name} from now on.`);
  }
  return learned.join(" ");
}
