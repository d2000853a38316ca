"use client";

import { useId, useState } from "react";
import { shortDay, type Day } from "#lib/calendar/index.ts";
import type { Tick } from "#lib/shopping/index.ts";
import type { LineView, RunView } from "#lib/use-cases/errands/run-view.ts";
import { Field } from "#app/_forms/field.client.tsx";
import { StandIn } from "./stand-in.client.tsx";
import { useChange } from "./use-change.client.ts";
import type { TickChange } from "./use-ticks.client.ts";
import styles from "./errands.module.css";

/** A trip that a line may be put on. */
export type TripChoice = { readonly shopId: string; readonly shopName: string; readonly day: Day };

/** How a line came about, the price paid, and what else can become of it. */
export function LineMore({
  monday,
  run,
  line,
  tick,
  trips,
  onTick,
}: {
  readonly monday: Day;
  readonly run: RunView;
  readonly line: LineView;
  readonly tick: Tick;
  readonly trips: readonly TripChoice[];
  readonly onTick: (change: TickChange) => void;
}) {
  const isHad = tick.state === "open" || tick.state === "bought";
  const canMove = tick.state === "open" && line.sellers.length > 0 && !run.isOver;
  return (
    <details className={styles.how}>
      <summary>
        More<span className="sr"> about {line.name}</span>
      </summary>
      {line.arithmetic !== "" && <p className="small">{line.arithmetic}</p>}
      {isHad && <PaidField tick={tick} onTick={onTick} />}
      <div className="row">
        {tick.state === "open" && (
          <>
            <button
              type="button"
              className="btn plain slim"
              onClick={() => {
                onTick({ state: "none-left", paidCents: null });
              }}
            >
              They had none
            </button>
            <button
              type="button"
              className="btn plain slim"
              onClick={() => {
                onTick({ state: "dropped", paidCents: null });
              }}
            >
              Leave it out
            </button>
          </>
        )}
        {!isHad && (
          <button
            type="button"
            className="btn plain slim"
            onClick={() => {
              onTick({ state: "open" });
            }}
          >
            Put it back
          </button>
        )}
        {tick.state === "open" && line.isByHand && <FreeLine monday={monday} lineId={line.id} />}
      </div>
      {tick.state === "none-left" && line.foodId !== null && (
        <StandIn monday={monday} foodId={line.foodId} />
      )}
      {line.foodId !== null && !run.isOver && (
        <OnlyThere
          key={`${line.isOnlyThereByHand}`}
          monday={monday}
          foodId={line.foodId}
          run={run}
          isSet={line.isOnlyThereByHand}
        />
      )}
      {canMove && (
        <FixForm
          monday={monday}
          line={line}
          trips={trips.filter((trip) => line.sellers.includes(trip.shopId))}
          here={run}
        />
      )}
    </details>
  );
}

/** What was paid for all packs of the line; noting it ticks the line. */
function PaidField({
  tick,
  onTick,
}: {
  readonly tick: Tick;
  readonly onTick: (change: TickChange) => void;
}) {
  const [typed, setTyped] = useState(
    tick.paidCents === null ? "" : (tick.paidCents / 100).toFixed(2),
  );
  const [problem, setProblem] = useState<string>();
  const keep = (): void => {
    const text = typed.trim().replace(",", ".");
    const cents = Math.round(Number(text) * 100);
    if (text === "" && tick.paidCents === null) return setProblem(undefined);
    if (text !== "" && !(cents >= 0 && cents <= 10_000_000)) {
      return setProblem("Write the price as a number, like 3.40.");
    }
    setProblem(undefined);
    if (text === "") onTick({ paidCents: null });
    else if (cents !== tick.paidCents) onTick({ state: "bought", paidCents: cents });
  };
  return (
    <Field
      label="Paid for all of it"
      inputMode="decimal"
      value={typed}
      error={problem}
      onChange={(event) => {
        setTyped(event.target.value);
      }}
      onBlur={keep}
      onKeyDown={(event) => {
        if (event.key === "Enter") keep();
      }}
    />
  );
}

/** Buys the food at this shop only, now and in later weeks, until that is taken back. */
function OnlyThere({
  monday,
  foodId,
  run,
  isSet,
}: {
  readonly monday: Day;
  readonly foodId: string;
  readonly run: RunView;
  readonly isSet: boolean;
}) {
  const { change, status } = useChange();
  const { shopId, shopName } = run;
  const [isOn, setIsOn] = useState(isSet);
  const decide = async (isWanted: boolean): Promise<void> => {
    setIsOn(isWanted);
    const isKept = await change({
      ...{ kind: "only-at", monday, foodId },
      shopId: isWanted ? shopId : "",
    });
    if (!isKept) setIsOn(!isWanted);
  };
  return (
    <label className={styles.only}>
      <input
        type="checkbox"
        checked={isOn}
        onChange={(event) => void decide(event.target.checked)}
      />
      Always buy it at {shopName}
      <span role="status">{status}</span>
    </label>
  );
}

function FreeLine({ monday, lineId }: { readonly monday: Day; readonly lineId: string }) {
  const { change, status } = useChange();
  return (
    <>
      <button
        type="button"
        className="btn plain slim"
        onClick={() => void change({ kind: "free-line", monday, lineId })}
      >
        Undo by hand
      </button>
      <span role="status">{status}</span>
    </>
  );
}

/** Puts a line on a trip of the user's choice, with so many packs; it stays there. */
function FixForm({
  monday,
  line,
  trips,
  here,
}: {
  readonly monday: Day;
  readonly line: LineView;
  readonly trips: readonly TripChoice[];
  readonly here: TripChoice;
}) {
  const id = useId();
  const { change, status, problems } = useChange();
  const [packs, setPacks] = useState(String(line.packs));
  const [trip, setTrip] = useState(`${here.day} ${here.shopId}`);
  const choices = [here, ...trips.filter((one) => keyOf(one) !== keyOf(here))];
  const fix = async (): Promise<void> => {
    const to = choices.find((one) => keyOf(one) === trip) ?? here;
    const { shopId, day } = to;
    const count = Number(packs);
    await change({ kind: "fix-line", monday, lineId: line.id, shopId, day, packs: count });
  };
  return (
    <form
      className={styles.fix}
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void fix();
      }}
    >
      <div>
        <label htmlFor={`${id}-trip`}>Buy it here instead</label>
        <select
          className="field"
          id={`${id}-trip`}
          value={trip}
          onChange={(event) => {
            setTrip(event.target.value);
          }}
        >
          {choices.map((one) => (
            <option key={keyOf(one)} value={keyOf(one)}>
              {shortDay(one.day)}, {one.shopName}
            </option>
          ))}
        </select>
      </div>
      <Field
        label="Packs"
        inputMode="numeric"
        value={packs}
        error={problems["packs"]}
        onChange={(event) => {
          setPacks(event.target.value);
        }}
      />
      <div className="row">
        <button className="btn plain slim" type="submit">
          Fix it by hand
        </button>
        <span role="status">{status}</span>
      </div>
    </form>
  );
}

function keyOf({ day, shopId }: TripChoice): string {
  return `${day} ${shopId}`;
}
