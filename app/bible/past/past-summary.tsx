import type { PastReport } from "#lib/use-cases/past/report-past.ts";

/** What a file adds, in sentences. */
export function PastSummary({
  report,
  isDone,
}: {
  readonly report: PastReport;
  readonly isDone: boolean;
}) {
  const { added, known, lineCount, errors, doubts } = report;
  const counts = [
    counted(added.weeks, "week"),
    counted(added.lunches, "lunch", "lunches"),
    counted(added.items, "item"),
    counted(added.verdicts, "verdict"),
  ].join(", ");
  const named = [
    ["Themes new to the pool", added.themes],
    ["Shops new to the bible", added.shops],
    ["Foods new to the Larder, each to be checked for allergens", added.foods],
  ] as const;
  return (
    <div>
      <p>
        <strong>{counted(lineCount, "line")}.</strong> {isDone ? "Added" : "Would add"}: {counts}.{" "}
        {known > 0 && `${counted(known, "line")} say what stands on record already. `}
        {errors > 0
          ? `${counted(errors, "error")} to settle before anything can be brought in.`
          : "No error."}{" "}
        {doubts > 0 && `${counted(doubts, "doubt")} to look at.`}
      </p>
      {named.map(
        ([label, names]) =>
          names.length > 0 && (
            <p className="small quiet" key={label}>
              {label}: {names.join(", ")}.
            </p>
          ),
      )}
    </div>
  );
}

function counted(count: number, one: string, many = `${one}s`): string {
  return `${count.toLocaleString("en")} ${count === 1 ? one : many}`;
}
