import Link from "next/link";
import { longDay } from "#lib/calendar/index.ts";
import { describeGrams } from "#lib/shopping/index.ts";
import type { FoodView } from "#lib/use-cases/larder/load-food.ts";
import { Icon } from "#app/_ui/icon.tsx";

/** What is recalled, and every lunch, lot and draft that holds it; nothing while nothing is. */
export function RecallNotice({ view }: { readonly view: FoodView }) {
  const { holders, recallNote, products, row } = view;
  if (!holders) return null;
  const recalled = products.filter((product) => product.recallNote !== null);
  const { lunches, lots, drafts } = holders;
  return (
    <section className="sheet broken" aria-label="Recall">
      <h2>
        <Icon name="stop" /> Recalled
      </h2>
      {recallNote !== null && (
        <p>
          {row.name}: {recallNote}
        </p>
      )}
      {recalled.map(({ fields, recallNote: note }) => (
        <p key={fields.id}>
          {fields.name}: {note}
        </p>
      ))}
      <p>
        Follow the notice and the maker’s or the authority’s advice. Where nobody noted which
        product it was, it is listed too.
      </p>
      <h3>Lunches, {lunches.length}</h3>
      {lunches.length === 0 && <p>none</p>}
      <ul>
        {lunches.map(({ itemId, date, fate, title }) => (
          <li key={itemId}>
            <Link href={`/callsheet/${date}`} prefetch={false}>
              {longDay(date)}
            </Link>
            , {title}, {fate}
          </li>
        ))}
      </ul>
      <h3>Stock, {lots.length}</h3>
      {lots.length === 0 && <p>none</p>}
      <ul>
        {lots.map(({ id, grams, place, boughtOn }) => (
          <li key={id}>
            {describeGrams(grams)}, {place}
            {boughtOn !== null && `, bought ${longDay(boughtOn)}`}
          </li>
        ))}
      </ul>
      <h3>Drafts, {drafts.length}</h3>
      {drafts.length === 0 && <p>none</p>}
      <ul>
        {drafts.map(({ id, kind, title, publishedOn }) => (
          <li key={id}>
            {kind}, {title}
            {publishedOn !== null && `, published ${publishedOn}`}
          </li>
        ))}
      </ul>
    </section>
  );
}
