import Link from "next/link";
import { notFound } from "next/navigation";
import { requestContext } from "#app/_server/context.ts";
import { PageHead } from "#app/_ui/page-head.tsx";
import { RULE_STARTS } from "#lib/safety/index.ts";
import { loadRuleSheet, startRuleSheet } from "#lib/use-cases/bible/rule-sheet.ts";
import { removeRuleAction } from "../../actions.ts";
import styles from "../../bible.module.css";
import { RuleForm } from "../../rule-form.client.tsx";
import { SwitchButton } from "../../switch-button.client.tsx";

export const metadata = { title: "A school rule" };

export default async function RulePage({ params, searchParams }: PageProps<"/bible/rules/[id]">) {
  const { id } = await params;
  const context = await requestContext();
  if (id === "new") {
    const { start } = await searchParams;
    const begun = typeof start === "string" ? start : undefined;
    const sheet = await startRuleSheet(context, begun);
    return (
      <>
        <PageHead kicker="Series bible" title="Add a school rule" />
        <section className="sheet">
          <p className="label" id="starts">
            Begin from one of our suggestions, then make it say what your school says
          </p>
          <ul className={styles.starts} aria-labelledby="starts">
            {RULE_STARTS.map((one) => (
              <li key={one.id}>
                <Link
                  className="btn plain slim"
                  href={`/bible/rules/new?start=${one.id}`}
                  prefetch={false}
                  aria-current={one.id === begun ? "true" : undefined}
                >
                  {one.rule.name}
                </Link>
              </li>
            ))}
          </ul>
          <RuleForm key={begun} sheet={sheet} />
        </section>
      </>
    );
  }
  const sheet = await loadRuleSheet(context, id);
  if (!sheet) notFound();
  return (
    <>
      <PageHead kicker="Series bible, a school rule" title={sheet.name}>
        <SwitchButton
          label="Remove this rule"
          spoken={`Remove the rule ${sheet.name}`}
          action={removeRuleAction}
          input={{ id }}
        />
      </PageHead>
      <section className="sheet">
        <RuleForm sheet={sheet} />
      </section>
    </>
  );
}
