import { requestContext } from "#app/_server/context.ts";
import { PageHead } from "#app/_ui/page-head.tsx";
import styles from "../bible.module.css";
import { listTables } from "#lib/use-cases/past/export-table.ts";
import { PastForm } from "./past-form.client.tsx";
import { WholeForm } from "./whole-form.client.tsx";

export const metadata = { title: "Bring your past" };

export default async function PastPage() {
  const tables = await listTables(await requestContext());
  return (
    <>
      <PageHead kicker="Series bible" title="Bring your past" />
      <div className={styles.stack}>
        <section className="sheet" aria-labelledby="weeks">
          <h2 id="weeks">Earlier weeks from a table</h2>
          <p className="quiet">
            A text file with a line for each thing in a lunch, or for each child that judged it. Any
            order of columns, any of the usual delimiters. Nothing is written before you have seen
            every match, doubt and error.
          </p>
          <PastForm />
        </section>
        <section className="sheet" aria-labelledby="take">
          <h2 id="take">Take everything with you</h2>
          <p className="quiet">
            The table holds every packed lunch with its verdicts, by on-screen names. The one file
            holds all of it, <strong>private names too</strong>: keep it at home. Photos are files
            of their own and stay in the data folder; so does the passphrase of the phones.
          </p>
          <p className="row">
            <a className="btn plain" href="/bible/past/lunches" download>
              Packed lunches as a table
            </a>
            <a className="btn plain" href="/bible/past/whole" download>
              Everything as one file
            </a>
          </p>
          <details>
            <summary className={styles.tablesHead}>
              Every kind of record as a table of its own
            </summary>
            <ul className={styles.tables}>
              {tables.map(({ name, rows }) => (
                <li key={name}>
                  <a href={`/bible/past/table/${name}`} download>
                    {name}
                  </a>{" "}
                  <span className="small quiet">{rows === 1 ? "1 row" : `${rows} rows`}</span>
                </li>
              ))}
            </ul>
          </details>
        </section>
        <section className="sheet" aria-labelledby="whole">
          <h2 id="whole">Put a whole series here</h2>
          <WholeForm />
        </section>
      </div>
    </>
  );
}
