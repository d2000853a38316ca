import fc from "fast-check";
import { expect, test } from "vitest";
import { addDays, day } from "#lib/calendar/index.ts";
import { bringPast } from "#lib/use-cases/past/bring-past.ts";
import { exportPast } from "#lib/use-cases/past/export-past.ts";
import { PAST_FIELDS } from "#lib/use-cases/past/past.input.ts";
import { readTable } from "#lib/use-cases/past/read-table.ts";
import { StartSeriesInput } from "#lib/use-cases/start-series.input.ts";
import { startSeries } from "#lib/use-cases/start-series.ts";
import type { Context } from "#lib/use-cases/context.ts";
import { testContext } from "#tests/support/test-context.ts";

const CHILDREN = [
  { privateName: "Ines", onScreenName: "Biscuit" },
  { privateName: "Tomas", onScreenName: "Pepper" },
];
async function started(): Promise<Context> {
  const context = testContext();
  await startSeries(context, StartSeriesInput.parse({ name: "A", children: CHILDREN }));
  return context;
}

/** Words as people type them: quotation marks, delimiters, line breaks, any script. */
const words = fc
  .array(
    fc.constantFrom("crunchy", '"', ",", ";", "\n", "\r\n", " ", "🥕", "ما", "é", "'", "|", "="),
    {
      maxLength: 8,
    },
  )
  .map((parts) => parts.join(""))
  .map((text) => (text.trim() === "" ? "" : text));
const name = fc.constantFrom("Night, Train", 'The "Tin"', "Étoile", "月", "Tide Pool");
const verdict = fc.record({
  eaten: fc.constantFrom("", "none", "¼", "½", "¾", "all"),
  face: fc.oneof(fc.constant(""), fc.double({ min: 0, max: 100, noNaN: true }).map(plainNumber)),
  quote: words,
});
const item = fc.record({
  food: fc.constantFrom("hummus", "cucumber slices", "apple slices", "cheddar cheese", "water"),
  amount: fc.double({ min: 0.001, max: 900, noNaN: true }).map(plainNumber),
  unit: fc.constantFrom("g", "cup", "slice", "each", "serving"),
  part: fc.constantFrom("main", "fruit", "extra"),
  shop: fc.constantFrom("", "Quay, North", "Lamp Street"),
  verdicts: fc.tuple(fc.option(verdict), fc.option(verdict)),
});
const past = fc.record({
  themes: fc.array(fc.option(name), { minLength: 4, maxLength: 4 }),
  lunches: fc.dictionary(
    fc.integer({ min: 0, max: 27 }).map(String),
    fc.uniqueArray(item, {
      minLength: 1,
      maxLength: 4,
      selector: (one) => [one.food, one.part, Number(one.amount), one.unit].join(),
    }),
    { minKeys: 1, maxKeys: 6 },
  ),
});

function plainNumber(number: number): string {
  // The shortest text that is this number again, without an exponent's plus sign.
  return String(Math.abs(number)).includes("e+") ? "1" : String(Math.abs(number));
}

/** The file's rows as an export orders them: by day, item and child. */
function rowsOf({ themes, lunches }: typeof past extends fc.Arbitrary<infer P> ? P : never) {
  const offsets = Object.keys(lunches)
    .map(Number)
    .sort((one, other) => one - other);
  return offsets.flatMap((offset) =>
    (lunches[String(offset)] ?? []).flatMap((one) => {
      const common = [
        ...[addDays(day("2026-01-05"), offset), themes[Math.floor(offset / 7)] ?? ""],
        ...[one.food, one.amount, one.unit, one.part, "", one.shop],
      ];
      const told = one.verdicts.flatMap((given, index) =>
        given && (given.eaten || given.face || given.quote)
          ? [[...common, CHILDREN[index]?.onScreenName ?? "", given.eaten, given.face, given.quote]]
          : [],
      );
      return told.length > 0 ? told : [[...common, "", "", "", ""]];
    }),
  );
}

/** A plain writer by RFC 4180, apart from the library that the export uses. */
function written(rows: readonly (readonly string[])[]): string {
  const cell = (text: string): string => `"${text.replaceAll('"', '""')}"`;
  return rows.map((row) => `${row.map(cell).join(",")}\r\n`).join("");
}

test("what is brought in leaves as it came, and brought in again changes nothing", async () => {
  let verdicts = 0;
  await fc.assert(
    fc.asyncProperty(past, async (made) => {
      const rows = rowsOf(made);
      verdicts += rows.filter((row) => row[8] !== "").length;
      const [first, second] = [await started(), await started()];
      const text = written([[...PAST_FIELDS], ...rows]);
      const brought = await bringPast(first, { text, reading: null, choices: {} });
      expect(brought.ok).toBe(true);
      const left = await exportPast(first);
      const cells = readTable(left, ",").rows.map((row) => row.cells);
      // A week's theme is said on all of its lines, whichever said it first.
      expect(cells.slice(1)).toEqual(rows);

      await bringPast(second, { text: left, reading: null, choices: {} });
      expect(await exportPast(second)).toBe(left);
      await bringPast(second, { text: left, reading: null, choices: {} });
      expect(await exportPast(second)).toBe(left);
      await first.db.$disconnect();
      await second.db.$disconnect();
    }),
    { numRuns: 20 },
  );
  expect(verdicts).toBeGreaterThan(20);
});
