import Link from "next/link";
import { notFound } from "next/navigation";
import { loadFoodLedger } from "#lib/use-cases/load-food-ledger.ts";
import { requestContext } from "#app/_server/context.ts";
import { PageHead } from "#app/_ui/page-head.tsx";
import { EstimateBar, StandingSign } from "#app/_ui/standing-bar.tsx";
import { FoodPath } from "../../charts/food-path.tsx";
import { percent, standingWords } from "../../words.ts";
import styles from "../../ledger.module.css";

export default async function FoodPage({ params }: PageProps<"/ledger/food/[id]">) {
  const view = await loadFoodLedger(await requestContext(), (await params).id);
  if (!view) notFound();
  const title = view.food.charAt(0).toUpperCase() + view.food.slice(1);
  return (
    <>
      <PageHead kicker="Ledger, the path of a food" title={title}>
        <Link className="btn plain" href="/ledger">
          The whole ledger
        </Link>
      </PageHead>
      <ul className={styles.stands}>
        {view.paths.map(({ childId, child, acceptance, why, points }) => (
          <li className="sheet" key={childId}>
            <h2>
              <Link href={`/ledger/child/${childId}`} prefetch={false}>
                {child}
              </Link>
            </h2>
            <StandingSign
              kind={acceptance.standing.kind}
              words={standingWords(acceptance.standing)}
            />
            <EstimateBar {...acceptance} tastings={acceptance.history?.tastings ?? 0} />
            <p className="small quiet">
              About {percent(acceptance.estimate)} is expected, {percent(acceptance.low)} to{" "}
              {percent(acceptance.high)} four times in five.
            </p>
            {points.length === 0 && <p className="small">{why}</p>}
          </li>
        ))}
      </ul>
      <div className={styles.halves}>
        {view.paths
          .filter(({ points }) => points.length > 0)
          .map((path) => (
            <FoodPath key={path.childId} path={path} food={view.food} />
          ))}
      </div>
    </>
  );
}
