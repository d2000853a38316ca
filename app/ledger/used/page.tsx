import Link from "next/link";
import { loadLedger } from "#lib/use-cases/load-ledger.ts";
import { LedgerSpan } from "#lib/use-cases/load-ledger.input.ts";
import { requestContext } from "#app/_server/context.ts";
import { PageHead } from "#app/_ui/page-head.tsx";
import { SpanChips } from "../span-chips.tsx";
import { UsedTable } from "../used-table.tsx";
import styles from "../ledger.module.css";

export const metadata = { title: "Used so far" };

export default async function Used({ searchParams }: PageProps<"/ledger/used">) {
  const span = LedgerSpan.parse((await searchParams)["span"]);
  const context = await requestContext();
  const { used } = await loadLedger(context, span);
  return (
    <>
      <PageHead kicker="Ledger" title="Used so far">
        <SpanChips room="/ledger/used" span={span} />
        <Link className="btn plain" href="/ledger">
          The whole ledger
        </Link>
      </PageHead>
      <div className={styles.halves}>
        <UsedTable what="Theme" lines={used.themes} today={context.today} />
        <UsedTable what="Food" lines={used.foods} today={context.today} />
      </div>
    </>
  );
}
