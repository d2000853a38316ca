import Link from "next/link";
import { requestContext } from "#app/_server/context.ts";
import { PageHead } from "#app/_ui/page-head.tsx";
import { loadMasthead } from "#lib/use-cases/load-masthead.ts";
import { StartForm } from "./start-form.client.tsx";
import styles from "./welcome.module.css";

export const metadata = { title: "Welcome" };

export default async function WelcomePage() {
  const { seriesName } = await loadMasthead(await requestContext());
  return (
    <>
      <PageHead kicker="Five lunches a week, each shot twice" title="Welcome to Noonbook" />
      {seriesName === undefined ? (
        <div className={styles.doors}>
          <section className="sheet">
            <h2>Start my series</h2>
            <p className="quiet">
              Only the name is needed. Everything else can wait, and can be changed later.
            </p>
            <StartForm />
          </section>
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
