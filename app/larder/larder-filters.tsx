import Link from "next/link";
import { COLOURS, FOOD_GROUPS } from "#lib/catalog/index.ts";
import type { LarderView } from "#lib/use-cases/larder/find-larder.ts";
import {
  STANDINGS,
  UNSEEN_WEEKS,
  type FindLarderInput,
} from "#lib/use-cases/larder/find-larder.input.ts";
import { Icon } from "#app/_ui/icon.tsx";
import { larderAddress } from "./larder-address.ts";
import styles from "./larder.module.css";

/** The ready-made views as chips, each with how many foods it holds. */
export function LarderChips({
  asked,
  view,
}: {
  readonly asked: FindLarderInput;
  readonly view: LarderView;
}) {
  const { counts } = view;
  const standing = asked.standing;
  const chips = [
    ["In use this month", { show: "in-use", standing: undefined }, view.view === "in-use"],
    [`All, ${counts.all}`, { show: "all", standing: undefined }, view.view === "all" && !standing],
    [`Use soon, ${counts.soon}`, { show: "soon", standing: undefined }, view.view === "soon"],
    [
      `In season now, ${counts.season}`,
      { show: "season", standing: undefined },
      view.view === "season",
    ],
    [
      `Resting, ${counts.resting}`,
      { show: "all", standing: "resting" },
      view.view === "all" && standing === "resting",
    ],
    [
      `Unmet, ${counts.unmet}`,
      { show: "all", standing: "unmet" },
      view.view === "all" && standing === "unmet",
    ],
    ...(counts.retired > 0
      ? ([
          [
            `Retired, ${counts.retired}`,
            { show: "retired", standing: undefined },
            view.view === "retired",
          ],
        ] as const)
      : []),
  ] as const;
  return (
    <nav className={`row ${styles.chips}`} aria-label="Show">
      {chips.map(([name, changes, isShown]) => (
        <Link
          className="chip"
          key={name}
          href={larderAddress(asked, changes)}
          aria-current={isShown ? "true" : undefined}
          prefetch={false}
          scroll={false}
        >
          {isShown && <Icon name="check" />}
          {name}
        </Link>
      ))}
    </nav>
  );
}

/** The filters that combine: group, colour, motif, a child's standing, how long it has not been on. */
export function LarderFilters({
  asked,
  view,
}: {
  readonly asked: FindLarderInput;
  readonly view: LarderView;
}) {
  const weeks = (number: number): string => (number === 1 ? "1 week" : `${number} weeks`);
  const isNarrowed =
    asked.motif !== "" ||
    asked.child !== "" ||
    [asked.group, asked.colour, asked.standing, asked.unseen].some((value) => value !== undefined);
  return (
    <details className={styles.filters} open={isNarrowed}>
      <summary>More filters</summary>
      <form action="/larder" className={styles.filterRow} key={larderAddress(asked, {})}>
        {asked.q !== "" && <input type="hidden" name="q" value={asked.q} />}
        <input type="hidden" name="show" value={view.view} />
        <Choice name="group" label="Group" chosen={asked.group} any="any" options={FOOD_GROUPS} />
        <Choice name="colour" label="Colour" chosen={asked.colour} any="any" options={COLOURS} />
        <Choice name="motif" label="Motif" chosen={asked.motif} any="any" options={view.motifs} />
        <Choice
          name="child"
          label="Child"
          chosen={asked.child}
          any="any child"
          options={view.children.map(({ id, name }) => [id, name] as const)}
        />
        <Choice
          name="standing"
          label="Standing"
          chosen={asked.standing}
          any="any"
          options={STANDINGS}
        />
        <Choice
          name="unseen"
          label="Not on for"
          chosen={asked.unseen === undefined ? undefined : String(asked.unseen)}
          any="any time"
          options={UNSEEN_WEEKS.map((number) => [String(number), weeks(number)] as const)}
        />
        <button className="btn plain" type="submit">
          Narrow down
        </button>
        {isNarrowed && (
          <Link className="btn plain" href="/larder" prefetch={false}>
            Clear
          </Link>
        )}
      </form>
    </details>
  );
}

function Choice({
  name,
  label,
  chosen,
  any,
  options,
}: {
  readonly name: string;
  readonly label: string;
  readonly chosen: string | undefined;
  readonly any: string;
  readonly options: readonly (string | readonly [value: string, words: string])[];
}) {
  return (
    <div>
      <label htmlFor={`filter-${name}`}>{label}</label>
      <select className="field" id={`filter-${name}`} name={name} defaultValue={chosen ?? ""}>
        <option value="">{any}</option>
        {options.map((option) => {
          const [value, words] = typeof option === "string" ? [option, option] : option;
          return (
            <option key={value} value={value}>
              {words}
            </option>
          );
        })}
      </select>
    </div>
  );
}
