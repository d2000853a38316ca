"use client";

import { useState } from "react";
import { readAllergens, type Allergen, type ToldAllergen } from "#lib/catalog/index.ts";
import { allergenWord } from "#lib/safety/index.ts";
import { Area } from "#app/_forms/area.client.tsx";
import styles from "./larder.module.css";

/** Boxes as they are ticked. */
export type AllergenTicks = { readonly allergens: Allergen[]; readonly maybe: Allergen[] };

/**
 * Reads what is known of a food and what is pasted from a label, says which allergens the words speak of that are not
 * ticked yet, and ticks them when asked. It unticks nothing.
 */
export function LabelReader({
  words,
  ticks,
  onTick,
}: {
  /** What is known without the label: the name, a house recipe. */
  readonly words: string;
  readonly ticks: AllergenTicks;
  readonly onTick: (ticks: AllergenTicks) => void;
}) {
  const [label, setLabel] = useState("");
  const { holds, someMakes } = readAllergens(`${words}\n${label}`);
  const isTicked = (allergen: Allergen): boolean =>
    ticks.allergens.includes(allergen) || ticks.maybe.includes(allergen);
  const untold = holds.filter(({ allergen }) => !isTicked(allergen));
  const unasked = someMakes.filter(({ allergen }) => !isTicked(allergen));
  const add = (list: readonly Allergen[], told: readonly ToldAllergen[]): Allergen[] => [
    ...list,
    ...told.map(({ allergen }) => allergen),
  ];

  return (
    <div className={styles.reader}>
      <Area
        label="Ingredients, as the label prints them"
        hint="To read allergens from; the list itself is not kept. Noonbook can miss a word: read the label yourself as well."
        rows={2}
        value={label}
        onChange={(event) => {
          setLabel(event.target.value);
        }}
      />
      <div role="status">
        {untold.length + unasked.length > 0 && (
          <p>
            {untold.length > 0 && <>The words speak of {wordsOf(untold)}. </>}
            {unasked.length > 0 && <>In some makes: {wordsOf(unasked)}.</>}
          </p>
        )}
      </div>
      {untold.length + unasked.length > 0 && (
        <button
          className="btn plain"
          type="button"
          onClick={() => {
            onTick({ allergens: add(ticks.allergens, untold), maybe: add(ticks.maybe, unasked) });
          }}
        >
          Tick these
        </button>
      )}
    </div>
  );
}

function wordsOf(told: readonly ToldAllergen[]): string {
  const list = new Intl.ListFormat("en", { type: "conjunction" });
  return list.format(told.map(({ allergen, words }) => `${allergenWord(allergen)} (“${words}”)`));
}
