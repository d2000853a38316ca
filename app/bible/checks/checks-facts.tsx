import { schemeWord, USUAL_CARRYING } from "#lib/safety/index.ts";
import type { BibleView } from "#lib/use-cases/bible/load-bible.ts";
import styles from "../bible.module.css";
import { SheetFrame } from "../sheet-frame.tsx";

const BAGS = {
  paper: "paper or cloth",
  soft: "a soft insulated bag",
  hard: "a hard insulated box",
} as const;

/** How lunch travels and by which scheme it is counted, on the front page of the bible. */
export function ChecksFacts({ settings }: { readonly settings: BibleView["settings"] }) {
  const { carrying, climateC, balanceScheme } = settings;
  const how = carrying ?? USUAL_CARRYING;
  const assumed = carrying === null ? " (assumed, not said)" : "";
  const facts: readonly (readonly [string, string])[] = [
    ["Carried in", `${BAGS[how.bag]}${assumed}`],
    ["Cold packs", `${how.packs} of ${how.packGrams} g`],
    ["Hot jar", `${how.jarMl} mL, filled at ${how.fillC} °C`],
    [
      "Read by thermometer",
      [how.bagReading && "bag", how.jarReading && "jar"].filter(Boolean).join(", ") ||
        "nothing yet",
    ],
    ["Outdoors by month", climateC === null ? "not said" : "said"],
    ["Balance by", schemeWord(balanceScheme)],
  ];
  return (
    <SheetFrame id="checks" title="Checks" href="/bible/checks" link="Change the checks">
      <dl className={styles.facts}>
        {facts.map(([name, said]) => (
          <div key={name} style={{ display: "contents" }}>
            <dt>{name}</dt>
            <dd>{said}</dd>
          </div>
        ))}
      </dl>
    </SheetFrame>
  );
}
