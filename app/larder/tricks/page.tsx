import Link from "next/link";
import { loadTricks, type TrickView } from "#lib/use-cases/larder/load-tricks.ts";
import type { TrickFields } from "#lib/use-cases/larder/trick.input.ts";
import { requestContext } from "#app/_server/context.ts";
import { PageHead } from "#app/_ui/page-head.tsx";
import styles from "../larder.module.css";
import { RetireButton } from "../retire-button.client.tsx";
import { TrickForm } from "./trick-form.client.tsx";

export const metadata = { title: "Tricks" };

const EMPTY: TrickFields = {
  ...{ id: "", editedAt: "", name: "", kind: "cutter", motifs: "", colours: [] },
  ...{ minutes: "1", needsSliceable: true },
};

export default async function TricksPage({ searchParams }: PageProps<"/larder/tricks">) {
  const wanted = (await searchParams)["edit"];
  const { tricks, sliceable } = await loadTricks(await requestContext());
  const edited = tricks.find(({ fields }) => fields.id === wanted);
  return (
    <>
      <PageHead kicker={`Larder, ${tricks.length} tricks`} title="Cuts, shapes, picks">
        <Link className="btn plain" href="/larder">
          Back to the Larder
        </Link>
      </PageHead>
      <p className={styles.found}>
        Any food that can be sliced can carry a cutter shape; {sliceable} foods here can. That is
        how a plain food fits a theme (common practice, no source).
      </p>
      <div className={styles.twoColumns}>
        <div className={`sheet ${styles.table}`}>
          <table>
            <caption className="sr">Tricks by kind</caption>
            <thead>
              <tr>
                {["Trick", "Motifs", "Minutes", "Times", "Last on", "Change"].map((name) => (
                  <th key={name} scope="col">
                    {name}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {tricks.map((trick) => (
                <TrickLine key={trick.fields.id} trick={trick} />
              ))}
            </tbody>
          </table>
        </div>
        <section className="sheet" id="trick">
          <h2>{edited ? `Edit ${edited.fields.name}` : "Add a trick"}</h2>
          <TrickForm
            key={`${edited?.fields.id} ${edited?.fields.editedAt} ${tricks.length}`}
            standing={edited?.fields ?? EMPTY}
          />
          {edited && (
            <p>
              <RetireButton
                kind="trick"
                id={edited.fields.id}
                name={edited.fields.name}
                isRetired={edited.isRetired}
              />
            </p>
          )}
        </section>
      </div>
    </>
  );
}

function TrickLine({ trick }: { readonly trick: TrickView }) {
  const { fields, isRetired, times, lastText } = trick;
  return (
    <tr>
      <th scope="row">
        <Link
          href={`/larder/find?${new URLSearchParams({ q: fields.name, kind: "trick", id: fields.id })}`}
          prefetch={false}
        >
          {fields.name}
        </Link>
        <small className={styles.kind}>
          {fields.kind}
          {fields.needsSliceable && ", for what can be sliced"}
          {isRetired && ", retired"}
        </small>
      </th>
      <td data-label="Motifs">{fields.motifs || "–"}</td>
      <td className="num" data-label="Minutes">
        {fields.minutes}
      </td>
      <td className="num" data-label="Times">
        {times}
      </td>
      <td data-label="Last on">{lastText}</td>
      <td data-label="Change">
        <Link href={`/larder/tricks?edit=${fields.id}#trick`} prefetch={false}>
          Edit<span className="sr"> {fields.name}</span>
        </Link>
      </td>
    </tr>
  );
}
