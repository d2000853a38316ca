import Link from "next/link";
import type { LarderView } from "#lib/use-cases/larder/find-larder.ts";
import type { LarderRow, StandingView } from "#lib/use-cases/larder/larder-rows.ts";
import { FoodCup } from "#app/_ui/food-cup.tsx";
import { Icon } from "#app/_ui/icon.tsx";
import { StandingBar } from "#app/_ui/standing-bar.tsx";
import styles from "./larder.module.css";

/** The foods of a page, a line each; on a phone each line becomes a card. */
export function LarderTable({ view }: { readonly view: LarderView }) {
  const { rows, children, total } = view;
  return (
    <div className={`sheet ${styles.table}`}>
      <table>
        <caption className="sr">
          {rows.length} of {total} foods
        </caption>
        <thead>
          <tr>
            {["Food", "From", "On hand", "Use by", "Last seen, rest", "Note"].map((name) => (
              <th key={name} scope="col">
                {name}
              </th>
            ))}
            {children.map(({ id, name }) => (
              <th key={id} scope="col">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <FoodLine key={row.id} row={row} people={children} />
          ))}
        </tbody>
      </table>
    </div>
  );
}

function FoodLine({
  row,
  people,
}: {
  readonly row: LarderRow;
  readonly people: LarderView["children"];
}) {
  const standingOf = (childId: string): StandingView | undefined =>
    row.standings.find((one) => one.childId === childId);
  return (
    <tr>
      <th scope="row">
        <span className={styles.food}>
          <FoodCup colour={row.colours[0] ?? "cream"} pattern={row.pattern} />
          <span>
            <Link href={`/larder/${row.id}`} prefetch={false}>
              {row.name}
            </Link>
            <small>
              {row.part}, {row.family}
            </small>
          </span>
        </span>
      </th>
      <td data-label="From">{row.from || "–"}</td>
      <td className="num" data-label="On hand">
        {row.onHand}
      </td>
      <td className="num" data-label="Use by">
        {row.useByText || "–"}
      </td>
      <td className="num" data-label="Last seen">
        {row.seenText}
        <br />
        <span className="small quiet">{row.restText}</span>
      </td>
      <td data-label="Note" className={row.notes.length === 0 ? styles.none : undefined}>
        <span className="row">
          {row.notes.map(({ text, isBroken }) => (
            <span className={isBroken ? "tag broken" : "tag"} key={text}>
              {isBroken && <Icon name="stop" />}
              {text}
            </span>
          ))}
        </span>
      </td>
      {people.map(({ id, name }) => {
        const standing = standingOf(id);
        return (
          <td key={id} data-label={name}>
            {standing && <StandingBar standing={standing} />}
          </td>
        );
      })}
    </tr>
  );
}
