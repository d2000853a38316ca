"use client";

import { useState } from "react";
import type { VerdictItem } from "#lib/use-cases/load-verdict-day.ts";
import { Face } from "#app/_ui/face.tsx";
import { Conflicts, verdictClash, type Clash } from "./conflicts.client.tsx";
import { ItemSheet } from "./item-sheet.client.tsx";
import { verdictWords, type Person } from "./person.ts";
import { TrayPicker } from "./tray-picker.client.tsx";
import type { useVerdicts } from "./use-verdicts.client.ts";
import styles from "./verdicts.module.css";

/** One child, one item at a time: how much was eaten, which face, what was said. Each tap is kept. */
export function VerdictDesk({
  desk,
  items: all,
  people,
  otherClashes,
}: {
  readonly desk: ReturnType<typeof useVerdicts>;
  readonly items: readonly VerdictItem[];
  readonly people: readonly Person[];
  /** What two phones said differently of the day itself. */
  readonly otherClashes: readonly Clash[];
}) {
  const [childId, setChildId] = useState(people[0]?.id ?? "");
  const [chosenId, setChosenId] = useState(all[0]?.id ?? "");
  const child = people.find((one) => one.id === childId);
  const itemsOf = (person: string): readonly VerdictItem[] =>
    all.filter(({ notFor }) => !notFor.includes(person));
  const items = itemsOf(childId);
  const item = items.find((one) => one.id === chosenId) ?? items[0];
  if (!child) return null;

  const { shown, log } = desk;
  const isLogged = (itemId: string, person: string): boolean =>
    shown(itemId, person).eaten !== null;
  const open = items.filter((one) => !isLogged(one.id, child.id));
  const others = people.filter(({ id }) => id !== child.id);
  const sameAs = (other: Person): void => {
    log(
      open.flatMap((one) => {
        const { eaten } = shown(one.id, other.id);
        return eaten === null ? [] : [{ itemId: one.id, childId: child.id, change: { eaten } }];
      }),
    );
  };
  const clashes = people.flatMap((person) =>
    itemsOf(person.id).flatMap((one) =>
      shown(one.id, person.id).conflicts.map((conflict) =>
        verdictClash({ itemId: one.id, item: one.name, child: person }, conflict, (value) => {
          log([{ itemId: one.id, childId: person.id, change: { [conflict.field]: value } }]);
        }),
      ),
    ),
  );
  const next = item && items[items.indexOf(item) + 1];
  const nextPerson = people[people.indexOf(child) + 1];
  return (
    <div className={styles.desk}>
      <div className={styles.people} role="group" aria-label="Whose verdict">
        {people.map((person) => (
          <button
            key={person.id}
            type="button"
            aria-pressed={person.id === child.id}
            onClick={() => {
              setChildId(person.id);
            }}
          >
            {person.name}
            <span>
              {itemsOf(person.id).filter((one) => isLogged(one.id, person.id)).length} of{" "}
              {itemsOf(person.id).length} logged
            </span>
          </button>
        ))}
      </div>
      <Conflicts clashes={[...clashes, ...otherClashes]} />
      <TrayPicker
        onPick={setChosenId}
        compartments={items.map((one) => ({
          ...one,
          key: one.id,
          eaten: shown(one.id, child.id).eaten ?? undefined,
          mark: one.id === item?.id ? "now" : undefined,
        }))}
      />
      <div className="row" role="group" aria-label="All at once">
        <button
          className="chip"
          type="button"
          disabled={open.length === 0}
          onClick={() => {
            log(open.map(({ id }) => ({ itemId: id, childId: child.id, change: { eaten: 4 } })));
          }}
        >
          All of it
        </button>
        {others.map((other) => (
          <button
            className="chip"
            type="button"
            key={other.id}
            disabled={!open.some((one) => isLogged(one.id, other.id))}
            onClick={() => {
              sameAs(other);
            }}
          >
            Same as {other.name}
          </button>
        ))}
        <button className="chip" type="button" disabled={!desk.canUndo} onClick={desk.undo}>
          Undo
        </button>
      </div>
      <div className="row" role="group" aria-label="Which item">
        {items.map((one) => (
          <button
            className="chip"
            key={one.id}
            type="button"
            aria-pressed={one.id === item?.id}
            onClick={() => {
              setChosenId(one.id);
            }}
          >
            {one.name}
          </button>
        ))}
      </div>
      {item && (
        <ItemSheet
          key={`${item.id} ${child.id}`}
          item={item}
          child={child}
          verdict={shown(item.id, child.id)}
          onSay={(change) => {
            log([{ itemId: item.id, childId: child.id, change }]);
          }}
        />
      )}
      {(next ?? nextPerson) && (
        <button
          className="btn"
          type="button"
          onClick={() => {
            if (next) setChosenId(next.id);
            else if (nextPerson) {
              setChildId(nextPerson.id);
              setChosenId(itemsOf(nextPerson.id)[0]?.id ?? "");
            }
          }}
        >
          {next ? `Next: ${next.name}` : `Next: ${nextPerson?.name ?? ""}`}
        </button>
      )}
      <Logged items={items} child={child} shown={desk.shown} />
    </div>
  );
}

/** What is logged for a child, and what of it still waits on this phone. */
function Logged({
  items,
  child,
  shown,
}: {
  readonly items: readonly VerdictItem[];
  readonly child: Person;
  readonly shown: ReturnType<typeof useVerdicts>["shown"];
}) {
  const lines = items
    .map((item) => ({ item, verdict: shown(item.id, child.id) }))
    .filter(({ verdict: { eaten, face, quote } }) => (eaten ?? face) !== null || quote !== "");
  if (lines.length === 0) return null;
  return (
    <section className="sheet" aria-label={`Logged for ${child.name}`}>
      <h2>Logged for {child.name}</h2>
      <ul className={styles.logged}>
        {lines.map(({ item, verdict }) => (
          <li key={item.id}>
            <div>
              <strong>{item.name}</strong>
              <p className="small quiet">
                {verdictWords(verdict, child)}
                {verdict.quote !== "" && ` “${verdict.quote}”`}
                {verdict.isWaiting && " (waits to be sent)"}
              </p>
              {verdict.note !== "" && <p className="small">{verdict.note}</p>}
            </div>
            {verdict.face !== null && <Face value={verdict.face} />}
          </li>
        ))}
      </ul>
    </section>
  );
}
