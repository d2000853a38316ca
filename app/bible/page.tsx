import Link from "next/link";
import { redirect } from "next/navigation";
import { requestContext } from "#app/_server/context.ts";
import { PageHead } from "#app/_ui/page-head.tsx";
import { loadBible } from "#lib/use-cases/bible/load-bible.ts";
import styles from "./bible.module.css";
import { ChecksFacts } from "./checks/checks-facts.tsx";
import { ChildrenSheet } from "./children-sheet.tsx";
import { DaysFacts, LimitsFacts, PublicFacts, SeriesFacts } from "./facts-sheets.tsx";
import { RulesSheet } from "./rules-sheet.tsx";
import { ShopsSheet } from "./shops-sheet.tsx";

export const metadata = { title: "Series bible" };

export default async function BiblePage() {
  const bible = await loadBible(await requestContext());
  if (!bible) redirect("/welcome");
  return (
    <>
      <PageHead kicker="What holds for every episode" title="Series bible">
        <Link className="btn plain" href="/bible/past" prefetch={false}>
          Bring your past
        </Link>
        <Link className="btn plain" href="/bible/phones">
          Phones
        </Link>
      </PageHead>
      <div className={styles.sheets}>
        <ChildrenSheet childRecords={bible.children} />
        <RulesSheet rules={bible.rules} foodNames={bible.foodNames} />
        <ShopsSheet shops={bible.shops} />
        <DaysFacts settings={bible.settings} daysOff={bible.daysOff} />
        <SeriesFacts name={bible.name} settings={bible.settings} />
        <LimitsFacts settings={bible.settings} />
        <ChecksFacts settings={bible.settings} />
        <PublicFacts settings={bible.settings} />
      </div>
    </>
  );
}
