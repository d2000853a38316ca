import Link from "next/link";
import { notFound, redirect } from "next/navigation";
import { allergenWord } from "#lib/safety/index.ts";
import { loadFood } from "#lib/use-cases/larder/load-food.ts";
import { requestContext } from "#app/_server/context.ts";
import { FoodCup } from "#app/_ui/food-cup.tsx";
import { PageHead } from "#app/_ui/page-head.tsx";
import { StandingBar } from "#app/_ui/standing-bar.tsx";
import { AppearanceList } from "../appearance-list.tsx";
import { FoodForm } from "../food-form.client.tsx";
import styles from "../larder.module.css";
import { MergeForm, UndoMergeButton } from "../merge-form.client.tsx";
import { RecallForm } from "../recall-form.client.tsx";
import { RetireButton } from "../retire-button.client.tsx";
import { FamilyForm } from "./family-form.client.tsx";
import { FoodProducts } from "./food-products.tsx";
import { RecallNotice } from "./recall-notice.tsx";
import { StepsForm } from "./steps-form.client.tsx";

export async function generateMetadata({ params }: PageProps<"/larder/[food]">) {
  const { food } = await params;
  return { title: `${food.replaceAll("-", " ")}, Larder` };
}

export default async function FoodPage({ params, searchParams }: PageProps<"/larder/[food]">) {
  const { food: id } = await params;
  const asked = Number((await searchParams)["page"] ?? 1);
  const page = Number.isInteger(asked) && asked > 0 && asked < 10_000 ? asked : 1;
  const view = await loadFood(await requestContext(), id, page);
  if (!view) notFound();
  if ("mergedInto" in view) redirect(`/larder/${view.mergedInto}`);
  const { row, fields, products } = view;
  const allergens = [
    ...fields.allergens.map(allergenWord),
    ...fields.maybe.map((allergen) => `${allergenWord(allergen)} (check the label)`),
  ];
  return (
    <>
      <PageHead kicker={`Larder, ${row.part}, ${row.family}`} title={row.name}>
        <RetireButton kind="food" id={fields.id} name={row.name} isRetired={row.isRetired} />
        <Link className="btn plain" href="/larder">
          Back to the Larder
        </Link>
      </PageHead>
      {row.isRetired && <p className={styles.found}>Retired: it is not proposed or offered.</p>}
      {view.isWish && (
        <p className={styles.found}>
          A viewer’s wish: it may hold any allergen, and it is not proposed or suggested until you
          have read a label, filled in this page and saved it.
        </p>
      )}
      <RecallNotice view={view} />
      <div className={styles.twoColumns}>
        <div className={styles.column}>
          <section className="sheet">
            <h2>What it is</h2>
            <p className="small quiet">
              {view.isOwn
                ? "Your own food."
                : view.isEdited
                  ? "From the reference catalogue, edited by you: later catalogues leave it alone."
                  : "From the reference catalogue. What you save here stays, whatever a later catalogue says."}
            </p>
            <FoodForm standing={fields} families={view.families} currency={view.currency} />
          </section>
          <section className="sheet">
            <h2>Getting it ready</h2>
            <p className="small quiet">
              Minutes are for one family batch. Usual steps are common practice, no source; the
              minutes you note on the mise teach the next plan.
            </p>
            <StepsForm standing={view.steps} />
          </section>
          <FoodProducts view={view} />
        </div>
        <div className={styles.column}>
          <section className="sheet">
            <h2>At a glance</h2>
            <div className={styles.glance}>
              <FoodCup colour={row.colours[0] ?? "cream"} pattern={row.pattern} />
              <dl>
                <dt>Holds</dt>
                <dd>
                  {allergens.length === 0
                    ? "no listed allergen on record: read the label"
                    : allergens.join(", ")}
                </dd>
                <dt>On hand</dt>
                <dd>{view.lots.length === 0 ? "none" : view.lots.join("; ")}</dd>
                <dt>Use by</dt>
                <dd>{row.useByText || "–"}</dd>
                <dt>Last on</dt>
                <dd>
                  {row.seenText}, {row.restText}
                </dd>
              </dl>
            </div>
            <ul className={styles.standings}>
              {row.standings.map((standing) => (
                <li key={standing.childId}>
                  <StandingBar standing={standing} />
                  <p className="small">{standing.sentence}</p>
                </li>
              ))}
            </ul>
          </section>
          <section className="sheet">
            <h2>When it was on</h2>
            {view.total === 0 ? (
              <p className="quiet">It has not been in a lunch yet.</p>
            ) : (
              <>
                <p className="small quiet">
                  {view.total === 1 ? "One entry" : `${view.total} entries`}, planned and scrapped
                  ones too, latest first.
                </p>
                <AppearanceList appearances={view.appearances} />
              </>
            )}
            {view.pages > 1 && (
              <nav className={styles.pages} aria-label="Pages of the history">
                Page {page} of {view.pages}
                {page > 1 && <Link href={`/larder/${id}?page=${page - 1}`}>later</Link>}
                {page < view.pages && <Link href={`/larder/${id}?page=${page + 1}`}>earlier</Link>}
              </nav>
            )}
          </section>
          <section className="sheet">
            <h2>Its family</h2>
            <p className="small quiet">
              {view.family.kin.length === 0
                ? "No other food is of this family."
                : `Kin: ${view.family.kin.join(", ")}.`}
            </p>
            <FamilyForm standing={view.family.fields} />
          </section>
          <section className="sheet">
            <h2>A duplicate?</h2>
            <p className="small quiet">
              Merging lets its history, stock, products and names follow to the other food.
            </p>
            <MergeForm foodId={fields.id} name={row.name} />
            {view.merges.map((merge) => (
              <p key={merge.changeId}>
                <UndoMergeButton {...merge} />
              </p>
            ))}
          </section>
          <section className="sheet">
            <h2>Recalled?</h2>
            <RecallForm
              subjects={[
                {
                  kind: "food",
                  id: fields.id,
                  name: row.name,
                  isRecalled: view.recallNote !== null,
                },
                ...products.map((product) => ({
                  kind: "product" as const,
                  id: product.fields.id,
                  name: product.fields.name,
                  isRecalled: product.recallNote !== null,
                })),
              ]}
            />
          </section>
        </div>
      </div>
    </>
  );
}
