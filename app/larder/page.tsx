import Link from "next/link";
import { redirect } from "next/navigation";
import { findLarder, type LarderView } from "#lib/use-cases/larder/find-larder.ts";
import { FindLarderInput } from "#lib/use-cases/larder/find-larder.input.ts";
import { loadMasthead } from "#lib/use-cases/load-masthead.ts";
import { requestContext } from "#app/_server/context.ts";
import { PageHead } from "#app/_ui/page-head.tsx";
import { larderAddress } from "./larder-address.ts";
import { LarderChips, LarderFilters } from "./larder-filters.tsx";
import { LarderSearch } from "./larder-search.client.tsx";
import { LarderTable } from "./larder-table.tsx";
import styles from "./larder.module.css";
import { singleValues } from "./single-values.ts";

export const metadata = { title: "Larder" };

export default async function LarderPage({ searchParams }: PageProps<"/larder">) {
  const context = await requestContext();
  const asked = FindLarderInput.parse(singleValues(await searchParams));
  const [{ seriesName }, view] = await Promise.all([
    loadMasthead(context),
    findLarder(context, asked),
  ]);
  if (seriesName === undefined) redirect("/welcome");
  return (
    <>
      <PageHead
        kicker={`Larder, ${view.foods} foods, ${view.products} products, ${view.tricks} tricks`}
        title="What is in the house"
      >
        <Link className="btn plain" href="/larder/tricks">
          Tricks
        </Link>
        <Link className="btn" href="/larder/new">
          Add a food
        </Link>
      </PageHead>
      <div className={styles.bar}>
        <LarderSearch typed={asked.q} />
        <LarderChips asked={asked} view={view} />
      </div>
      <LarderFilters asked={asked} view={view} />
      {view.foundTricks.length > 0 && (
        <p className={styles.found}>
          Tricks by that name:{" "}
          {view.foundTricks.map(({ id, name }, index) => (
            <span key={id}>
              {index > 0 && ", "}
              <Link href={`/larder/tricks?edit=${id}`} prefetch={false}>
                {name}
              </Link>
            </span>
          ))}
          .
        </p>
      )}
      {view.rows.length > 0 ? <LarderTable view={view} /> : <NothingFound asked={asked} />}
      <div className={styles.key}>
        <span>
          <b>Dot:</b> how much of it is likely to be eaten, 0 to 100 %.
        </span>
        <span>
          <b>Bar:</b> where it may lie, four times in five.
        </span>
        <span>New foods often need 8 to 15 tastings. A refusal only rests a food.</span>
        <Pages asked={asked} view={view} />
      </div>
    </>
  );
}

function NothingFound({ asked }: { readonly asked: FindLarderInput }) {
  return (
    <div className="sheet">
      <h2>No food fits that</h2>
      <p>
        {asked.q === "" ? "Loosen a filter, or " : `Nothing here goes by “${asked.q}”. `}
        <Link href="/larder?show=all">look at all foods</Link>
        {asked.q !== "" && (
          <>
            , or <Link href={`/larder/new?name=${encodeURIComponent(asked.q)}`}>add it</Link>
          </>
        )}
        .
      </p>
    </div>
  );
}

function Pages({ asked, view }: { readonly asked: FindLarderInput; readonly view: LarderView }) {
  const { from, rows, total, page, pages } = view;
  if (rows.length === 0) return null;
  return (
    <nav className={styles.pages} aria-label="Pages of the table">
      Rows {from + 1} to {from + rows.length} of {total}
      {page > 1 && <Link href={larderAddress(asked, { page: page - 1 })}>previous</Link>}
      {page < pages && <Link href={larderAddress(asked, { page: page + 1 })}>next</Link>}
    </nav>
  );
}
