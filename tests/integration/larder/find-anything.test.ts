import { expect, test } from "vitest";
import type { Context } from "#lib/use-cases/context.ts";
import { findAnything } from "#lib/use-cases/larder/find-anything.ts";
import { loadFind } from "#lib/use-cases/larder/load-find.ts";
import { FindInput } from "#lib/use-cases/larder/load-find.input.ts";
import { loadDemo } from "#lib/use-cases/load-demo.ts";
import { tinHarbour } from "#seed/demo/index.ts";
import { referenceThemes } from "#seed/index.ts";
import { testContext } from "#tests/support/test-context.ts";

async function demo(): Promise<Context> {
  const context = testContext();
  await loadDemo(context, tinHarbour, referenceThemes());
  return context;
}

test("the times and the last day of every answer agree with a plain count of the records", async () => {
  const context = await demo();
  const { db, today } = context;
  const asked = ["crispbread", "rye crackers", "star", "dinosaur dig", "cucumber", "moon"];
  const hits = (await Promise.all(asked.map((typed) => findAnything(context, typed)))).flat();
  expect(new Set(hits.map(({ kind }) => kind))).toEqual(
    new Set(["food", "product", "trick", "theme"]),
  );
  for (const { kind, id, times, last } of hits) {
    const where = {
      food: { foodId: id },
      product: { productId: id },
      trick: { tricks: { some: { trickId: id } } },
    };
    const days =
      kind === "theme"
        ? (await db.episode.findMany({ where: { themeId: id } })).map(({ weekOf }) => weekOf)
        : (
            await db.lunchItem.findMany({
              where: { ...where[kind], fate: { not: "scrapped" } },
              include: { lunch: true },
            })
          ).map(({ lunch }) => lunch.date);
    const past = days.filter((date) => date <= today).sort();
    expect([times, last], `${kind} ${id}`).toEqual([past.length, past.at(-1) ?? null]);
  }
});

test("a half-typed word finds, a full name goes first whatever it is, and a stranger finds nothing", async () => {
  const context = await demo();
  const first = async (typed: string) => (await findAnything(context, typed))[0];
  expect(await first("crispb")).toMatchObject({ kind: "food", id: "crispbread" });
  expect(await first("Letters and Stamps")).toMatchObject({ kind: "theme" });
  expect(await first("star cutter")).toMatchObject({ kind: "trick", id: "star-cutter" });
  expect(await findAnything(context, "   ")).toEqual([]);
  expect(await findAnything(context, "%_'\"\\ qqqq")).toEqual([]);
});

test("what was chosen is spread out with episodes and verdicts, by on-screen names alone", async () => {
  const context = await demo();
  const view = await loadFind(context, FindInput.parse({ q: "crispbread" }));
  expect(view.chosen).toMatchObject({ kind: "food", id: "crispbread" });
  const planned = await context.db.lunchItem.count({ where: { foodId: "crispbread" } });
  expect(view.appearances).toHaveLength(planned);
  const days = view.appearances.map(({ date }) => date);
  expect(days).toEqual([...days].sort().reverse());
  expect(view.means.map(({ child }) => child)).toEqual(["Biscuit", "Pepper"]);
  expect(view.appearances.some(({ verdicts }) => verdicts.length === 2)).toBe(true);
  expect(JSON.stringify(view)).not.toMatch(/Ines|Tomas/);

  const theme = await loadFind(context, FindInput.parse({ q: "letters and stamps" }));
  expect(theme.chosen?.kind).toBe("theme");
  expect(theme.weeks.length).toBe(
    await context.db.episode.count({ where: { themeId: theme.chosen?.id ?? "" } }),
  );
});

test("an answer is new as soon as something is written", async () => {
  const context = await demo();
  const before = (await findAnything(context, "crispbread"))[0];
  const lunch = await context.db.lunch.findUniqueOrThrow({ where: { date: context.today } });
  await context.db.lunchItem.create({
    data: { lunchId: lunch.id, foodId: "crispbread", part: "grain", amount: 10, unit: "g" },
  });
  expect((await findAnything(context, "crispbread"))[0]).toMatchObject({
    times: (before?.times ?? 0) + 1,
    last: context.today,
  });
});
