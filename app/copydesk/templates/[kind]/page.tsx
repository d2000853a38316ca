import Link from "next/link";
import { notFound } from "next/navigation";
import { DRAFT_KINDS, DRAFT_NAMES } from "#lib/drafts/index.ts";
import { loadTemplate } from "#lib/use-cases/edit-template.ts";
import { requestContext } from "#app/_server/context.ts";
import { PageHead } from "#app/_ui/page-head.tsx";
import styles from "../../copydesk.module.css";
import { TemplateForm } from "../template-form.client.tsx";

export const metadata = { title: "Templates" };

/** What a template can name, and what it gives. */
const NAMES = [
  ["opener", "a first sentence that changes from week to week"],
  ["disclosures", "what was given or paid, a sentence each"],
  ["told_days", "the days that are over (before the first: the plan)"],
  ["days", "every day that can be told, also those to come"],
  ["day.name, day.angle, day.foods", "“Monday”, the angle, the foods as a list"],
  ["day.packed, day.minutes, day.quote", "a sentence each, or nothing"],
  ["day.swaps, day.verdicts, day.quotes", "sentences, one after another"],
  ["day.firsts, day.returns", "what came for the first time, or back"],
  ["week.tally, week.finished, week.untouched", "the week’s verdicts, a sentence each"],
  ["week.quotes, week.firsts, week.returns", "sentences of the whole week"],
  ["week.milestones, week.swaps, week.minutes", "sentences of the whole week"],
  ["found", "shops: place.shop, place.food_names"],
  ["allergens, next", "a sentence each, or nothing"],
  ["promises.kept, promises.open", "what was promised to viewers"],
  ["episode.title, episode.number, series.name", "names and numbers"],
  ["sign_on, sign_off, house_phrase, emoji", "from the Series bible"],
] as const;

/** One template: its words, its versions, and what it writes. */
export default async function TemplatePage({ params }: PageProps<"/copydesk/templates/[kind]">) {
  const name = (await params).kind;
  const kind = DRAFT_KINDS.find((one) => one === name);
  if (!kind) notFound();
  const template = await loadTemplate(await requestContext(), kind);
  return (
    <>
      <PageHead kicker="Copy desk, templates" title={template.name}>
        <Link className="btn plain" href="/copydesk">
          Back to the pack
        </Link>
      </PageHead>
      <nav className={styles.pieces} aria-label="Templates">
        <ul>
          {DRAFT_KINDS.map((one) => (
            <li key={one}>
              <Link
                href={`/copydesk/templates/${one}`}
                aria-current={one === kind ? "page" : undefined}
                prefetch={false}
              >
                {DRAFT_NAMES[one]}
              </Link>
            </li>
          ))}
        </ul>
      </nav>
      <TemplateForm key={kind} template={template} />
      <details className={`sheet ${styles.names}`}>
        <summary>What a template can name</summary>
        <dl>
          {NAMES.map(([words, meaning]) => (
            <div key={words}>
              <dt>
                <code>{words}</code>
              </dt>
              <dd>{meaning}</dd>
            </div>
          ))}
        </dl>
        <p className="small quiet">
          Every sentence that comes from a record keeps its record, in your template too. Lists are
          walked with <code>{"{% for day in told_days %} … {% endfor %}"}</code>, conditions are{" "}
          <code>{"{% if found.size > 0 %} … {% endif %}"}</code>; files and code are out of reach.
        </p>
      </details>
    </>
  );
}
