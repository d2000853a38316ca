"use client";

import { useId, useState } from "react";
import { mediumDay, shortDay, type Day } from "#lib/calendar/index.ts";
import type { ErrandsView } from "#lib/use-cases/errands/load-errands.ts";
import sheet from "#app/_ui/one-page.module.css";
import { planAnewAction } from "./actions.ts";
import type { TripChoice } from "./line-more.client.tsx";
import { useChange } from "./use-change.client.ts";
import styles from "./errands.module.css";

/** How good the plan is, what the user decided against it, and one more run. */
export function WeekPlan({
  view,
}: {
  readonly view: Pick<ErrandsView, "monday" | "proof" | "otherTrips" | "notTo" | "onlyAt">;
}) {
  const { monday } = view;
  const { change, status } = useChange();
  return (
    <section className={`${sheet.box ?? ""} noprint`}>
      <h2>The plan</h2>
      {view.proof !== "" && <p className="small">{view.proof}</p>}
      <p className="small quiet">
        A trip counts like two and more of money, a farther shop more. What you decide stays.
      </p>
      {view.proof !== "" && <PlanAnew monday={monday} />}
      {view.notTo.length + view.onlyAt.length > 0 && (
        <ul>
          {view.notTo.map((trip) => (
            <li key={`${trip.day} ${trip.shopId}`} className={styles.decided}>
              Not to {trip.shopName} on {mediumDay(trip.day)}
              <button
                type="button"
                className="btn plain slim"
                onClick={() =>
                  void change({ kind: "leave-open", monday, shopId: trip.shopId, day: trip.day })
                }
              >
                Undo<span className="sr">: not to {trip.shopName}</span>
              </button>
            </li>
          ))}
          {view.onlyAt.map(({ foodId, food, shopName }) => (
            <li key={foodId} className={styles.decided}>
              {food} only at {shopName}
              <button
                type="button"
                className="btn plain slim"
                onClick={() => void change({ kind: "only-at", monday, foodId, shopId: "" })}
              >
                Undo<span className="sr">: {food} only there</span>
              </button>
            </li>
          ))}
        </ul>
      )}
      {view.otherTrips.length > 0 && (
        <AddRun
          trips={view.otherTrips}
          onAdd={({ shopId, day }) => void change({ kind: "go", monday, shopId, day })}
        />
      )}
      <p role="status" className="small">
        {status}
      </p>
    </section>
  );
}

function PlanAnew({ monday }: { readonly monday: Day }) {
  const [status, setStatus] = useState("");
  const [isBusy, setIsBusy] = useState(false);
  const plan = async (): Promise<void> => {
    setIsBusy(true);
    setStatus("Looking for the cheapest runs. This takes some seconds.");
    const state = await planAnewAction({ monday }).catch(() => undefined);
    setIsBusy(false);
    setStatus(
      state?.kind === "saved"
        ? "Planned anew."
        : "Noonbook did not answer. The plan stands as it was.",
    );
  };
  return (
    <div className="row">
      <button
        type="button"
        className="btn plain slim"
        disabled={isBusy}
        onClick={() => void plan()}
      >
        Plan the week anew
      </button>
      <span role="status" className="small">
        {status}
      </span>
    </div>
  );
}

function AddRun({
  trips,
  onAdd,
}: {
  readonly trips: readonly TripChoice[];
  readonly onAdd: (trip: TripChoice) => void;
}) {
  const id = useId();
  const [chosen, setChosen] = useState(0);
  return (
    <form
      className={styles.fix}
      onSubmit={(event) => {
        event.preventDefault();
        const trip = trips[chosen] ?? trips[0];
        if (trip) onAdd(trip);
        setChosen(0);
      }}
    >
      <div>
        <label htmlFor={id}>One more run</label>
        <select
          className="field"
          id={id}
          value={chosen}
          onChange={(event) => {
            setChosen(Number(event.target.value));
          }}
        >
          {trips.map((trip, index) => (
            <option key={`${trip.day} ${trip.shopId}`} value={index}>
              {shortDay(trip.day)}, {trip.shopName}
            </option>
          ))}
        </select>
      </div>
      <div className="row">
        <button className="btn plain slim" type="submit">
          Go there too
        </button>
      </div>
    </form>
  );
}
