import Link from "next/link";
import { longDay } from "#lib/calendar/index.ts";
import type { SchoolRule } from "#lib/safety/index.ts";
import type { BibleView } from "#lib/use-cases/bible/load-bible.ts";
import styles from "./bible.module.css";
import { SheetFrame } from "./sheet-frame.tsx";
import { allergenWords, traitWords, weekdayWords } from "./words.ts";

/** The school's rules: what each keeps out, and when. */
export function RulesSheet({
  rules,
  foodNames,
}: {
  readonly rules: BibleView["rules"];
  readonly foodNames: ReadonlyMap<string, string>;
}) {
  return (
    <SheetFrame isWide id="rules" title="School rules" href="/bible/rules/new" link="Add a rule">
      {rules.length === 0 ? (
        <p className="quiet">
          No rule yet. Write down what the school says; the plan then keeps to it.
        </p>
      ) : (
        <ul className={styles.rows}>
          {rules.map(({ id, rule, isActive }) => (
            <li key={id}>
              <div>
                <Link className={styles.name} href={`/bible/rules/${id}`} prefetch={false}>
                  {rule.name}
                </Link>
                <p className="small quiet">
                  {[
                    ...(isActive ? [] : ["switched off"]),
                    `keeps out ${namedBy(rule, foodNames)}`,
                    whenOf(rule),
                  ].join("; ")}
                </p>
              </div>
            </li>
          ))}
        </ul>
      )}
    </SheetFrame>
  );
}

function namedBy(rule: SchoolRule, foodNames: ReadonlyMap<string, string>): string {
  const named = [
    ...rule.traits.map((trait) => traitWords(trait).toLowerCase()),
    ...rule.allergens.map((allergen) => allergenWords(allergen).toLowerCase()),
    ...rule.foods.map((food) => foodNames.get(food) ?? food),
  ];
  return named.length === 0 ? "nothing yet" : [...new Set(named)].join(", ");
}

function whenOf(rule: SchoolRule): string {
  return [
    rule.weekdays === null ? "every day" : weekdayWords(rule.weekdays),
    ...(rule.from === null ? [] : [`from ${longDay(rule.from)}`]),
    ...(rule.to === null ? [] : [`until ${longDay(rule.to)}`]),
    ...(rule.exceptDays.length === 0
      ? []
      : [`lifted on ${rule.exceptDays.map(longDay).join(", ")}`]),
  ].join(", ");
}
