import Link from "next/link";
import { addDays, daySpan, partsOf } from "#lib/calendar/index.ts";
import type { Hit } from "#lib/use-cases/larder/find-anything.ts";
import { loadFind, type FindView } from "#lib/use-cases/larder/load-find.ts";
import { FindInput } from "#lib/use-cases/larder/load-find.input.ts";
import { requestContext } from "#app/_server/context.ts";
import { PageHead } from "#app/_ui/page-head.tsx";
import { AppearanceList } from "../appearance-list.tsx";
import styles from "../larder.module.css";
import { singleValues } from "../single-values.ts";

export const metadata = { title: "Has it ever been on?" };

const HOMES: Readonly<Partial<Record<Hit["kind"], (id: string) => string>>> = {
  food: (id) => `/larder/${id}`,
};

export default async function FindPage({ searchParams }: PageProps<"/larder/find">) {
  const asked = FindInput.parse(singleValues(await searchParams));
  const view = await loadFind(await requestContext(), asked);
  const { hits, chosen } = view;
  return (
    <>
      <PageHead kicker="Foods, products, tricks and themes" title="Has it ever been on?" />
      <form action="/larder/find" role="search" aria-label="Whole search" className={styles.ask}>
        <div>
          <label htmlFor="find-whole">Name it as you would say it</label>
          <input
            className="field"
            id="find-whole"
            name="q"
            type="search"
            maxLength={200}
            defaultValue={asked.q}
            key={asked.q}
          />
        </div>
        <button className="btn" type="submit">
          Look
        </button>
      </form>
      {asked.q !== "" && hits.length === 0 && (
        <div className="sheet">
          <h2>Not that anyone noted</h2>
          <p>
            Nothing here goes by “{asked.q}”. Try another name, or{" "}
            <Link href={`/larder/new?name=${encodeURIComponent(asked.q)}`}>
              add it to the Larder
            </Link>
            .
          </p>
        </div>
      )}
      {chosen && (
        <div className={styles.twoColumns}>
          <section className="sheet">
            <h2>{chosen.name}</h2>
            <p>
              <b>{chosen.words}.</b> {meansText(view)}
            </p>
            <Times view={view} />
            <Pages view={view} asked={asked} />
            {HOMES[chosen.kind] && (
              <p>
                <Link href={HOMES[chosen.kind]?.(chosen.id) ?? "/larder"}>
                  All about it in the Larder
                </Link>
              </p>
            )}
          </section>
          <section className="sheet">
            <h2>By that name</h2>
            <ul className={styles.hits}>
              {hits.map((hit) => (
                <li key={`${hit.kind} ${hit.id}`}>
                  <Link
                    href={`/larder/find?${new URLSearchParams({ q: asked.q, kind: hit.kind, id: hit.id })}`}
                    aria-current={hit === chosen ? "true" : undefined}
                    prefetch={false}
                  >
                    {hit.name}
                  </Link>
                  , {hit.kind}
                  <span className="small quiet"> {hit.words}</span>
                </li>
              ))}
            </ul>
          </section>
        </div>
      )}
    </>
  );
}

function meansText({ means }: FindView): string {
  if (means.length === 0) return "No verdict on it yet.";
  const parts = means.map(
    ({ child, percent, verdicts }) =>
      `${child} ate ${percent} % of it on the whole (${verdicts} ${verdicts === 1 ? "verdict" : "verdicts"})`,
  );
  return `${parts.join("; ")}.`;
}

function Times({ view }: { readonly view: FindView }) {
  const { chosen, weeks, appearances } = view;
  if (chosen?.kind !== "theme")
    return <AppearanceList appearances={appearances} withFood={chosen?.kind !== "food"} />;
  return (
    <ol className={styles.appearances}>
      {weeks.map(({ number, weekOf, lunches, isPublished }) => (
        <li key={number}>
          <Link href={`/slate/week/${weekOf}`} prefetch={false}>
            Episode {number}, {daySpan(weekOf, addDays(weekOf, 4))} {partsOf(weekOf)[0]}
          </Link>
          , {lunches} {lunches === 1 ? "lunch" : "lunches"}
          {isPublished && ", published"}
        </li>
      ))}
    </ol>
  );
}

function Pages({
  view,
  asked,
}: {
  readonly view: FindView;
  readonly asked: { readonly q: string };
}) {
  const { chosen, page, pages } = view;
  if (!chosen || pages === 1) return null;
  const to = (number: number): string =>
    `/larder/find?${new URLSearchParams({ q: asked.q, kind: chosen.kind, id: chosen.id, page: String(number) })}`;
  return (
    <nav className={styles.pages} aria-label="Pages of the history">
      Page {page} of {pages}
      {page > 1 && <Link href={to(page - 1)}>later</Link>}
      {page < pages && <Link href={to(page + 1)}>earlier</Link>}
    </nav>
  );
}
