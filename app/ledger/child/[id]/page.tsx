import Link from "next/link";
import { notFound } from "next/navigation";
import { daysAgo, type Day } from "#lib/calendar/index.ts";
import { TASTINGS_GUIDE } from "#lib/reactions/index.ts";
import {
  loadChildLedger,
  type ChildLedger,
  type FoodStanding,
} from "#lib/use-cases/load-child-ledger.ts";
import { requestContext } from "#app/_server/context.ts";
import { PageHead } from "#app/_ui/page-head.tsx";
import { EstimateBar, StandingSign } from "#app/_ui/standing-bar.tsx";
import { count, standingWords } from "../../words.ts";
import styles from "../../ledger.module.css";

const HEADS = {
  unmet: "Unmet",
  dependable: "Dependable",
  mixed: "Mixed",
  meeting: "Meeting",
  resting: "Resting",
} as const;

export default async function ChildPage({ params }: PageProps<"/ledger/child/[id]">) {
  const context = await requestContext();
  const view = await loadChildLedger(context, (await params).id);
  if (!view) notFound();
  const met = view.groups.reduce((sum, { foods }) => sum + foods.length, 0);
  return (
    <>
      <PageHead kicker={`Ledger, ${count(met, "food")} met`} title={`${view.name} and the foods`}>
        <Link className="btn plain" href="/ledger">
          The whole ledger
        </Link>
      </PageHead>
      {met === 0 ? (
        <section className="sheet">
          <p>{view.name} has no verdict on record yet.</p>
        </section>
      ) : (
        <>
          <TryAgain view={view} today={context.today} />
          {view.groups
            .filter(({ foods }) => foods.length > 0)
            .map(({ kind, foods }) => (
              <section className={`sheet ${styles.group}`} key={kind} aria-labelledby={kind}>
                <h2 id={kind}>
                  {HEADS[kind]}, {count(foods.length, "food")}
                </h2>
                <ul className={styles.foods}>
                  {foods.map((food) => (
                    <FoodLine key={food.foodId} food={food} today={context.today} />
                  ))}
                </ul>
              </section>
            ))}
          <p className="small quiet">
            Dot: the share likely to be eaten, from none to all. Bar: where it may lie, four times
            in five. Studies gave a new food {TASTINGS_GUIDE.from} to {TASTINGS_GUIDE.to} tastings;
            that is a guide for planning and no promise. A refusal only rests a food.
          </p>
        </>
      )}
    </>
  );
}

function TryAgain({ view, today }: { readonly view: ChildLedger; readonly today: Day }) {
  if (view.tryAgain.length === 0) return null;
  return (
    <section className={`sheet ${styles.group}`} aria-labelledby="try-again">
      <h2 id="try-again">Try again</h2>
      <ol className={styles.tries}>
        {view.tryAgain.map(({ foodId, food, why, lastDay }) => (
          <li key={foodId}>
            <Link href={`/ledger/food/${foodId}`} prefetch={false}>
              {food}
            </Link>{" "}
            <span className="small quiet">last {daysAgo(lastDay, today)}</span>
            <p className="small">{why}</p>
          </li>
        ))}
      </ol>
    </section>
  );
}

/** A plain anchor: hundreds of client links would double the page. */
function FoodLine({ food, today }: { readonly food: FoodStanding; readonly today: Day }) {
  return (
    <li>
      <div>
        <a href={`/ledger/food/${food.foodId}`}>{food.food}</a>
        <span className="small quiet"> last {daysAgo(food.lastDay, today)}</span>
      </div>
      <div className={styles.mark}>
        {food.standing.kind === "resting" && (
          <StandingSign kind="resting" words={standingWords(food.standing)} />
        )}
        <span className="small num">
          {count(food.tastings, "tasting")} in {count(food.offers, "offer")}
        </span>
        <EstimateBar {...food} />
      </div>
      {food.standing.kind !== "dependable" && <p className="small">{food.why}</p>}
    </li>
  );
}
