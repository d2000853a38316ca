import Link from "next/link";
import { requestContext } from "#app/_server/context.ts";
import { PageHead } from "#app/_ui/page-head.tsx";
import { loadMasthead } from "#lib/use-cases/load-masthead.ts";
import { DemoDoor } from "./demo-door.client.tsx";
import { StartForm } from "./start-form.client.tsx";
import styles from "./welcome.module.css";

export const metadata = { title: "Welcome" };

export default async function WelcomePage() {
  const { seriesName, isDemo } = await loadMasthead(await requestContext());
  return (
    <>
      <PageHead kicker="Five lunches a week, each shot twice" title="Welcome to Noonbook" />
      {seriesName === undefined || isDemo ? (
        <div className={styles.doors}>
          <section className="sheet">
            <h2>Start my series</h2>
            <p className="quiet">
              Only the name is needed. Everything else can wait, and can be changed later.
            </p>
            {isDemo && (
              <p className="quiet">
                The demo makes way for your series. Foods you changed in the Larder stay as they
                are.
              </p>
            )}
            <StartForm />
          </section>
          {!isDemo && (
            <section className="sheet">
              <h2>Look around the demo</h2>
              <p className="quiet">
                Tin Harbour is an invented series: a year of theme weeks, two children, every room
                filled. You can leave it for your own at any time.
              </p>
              <DemoDoor />
            </section>
          )}
        </div>
      ) : (
        <section className="sheet">
          <h2>{seriesName} is under way</h2>
          <p>
            <Link className="btn" href="/slate">
              Open the slate
            </Link>
          </p>
        </section>
      )}
    </>
  );
}
