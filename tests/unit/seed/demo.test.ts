import { describe, expect, test } from "vitest";
import { groupBy } from "#lib/base/index.ts";
import {
  addDays,
  day,
  mondayOf,
  overlapsSeason,
  partsOf,
  weekdayOf,
  weeksLater,
} from "#lib/calendar/index.ts";
import { QUOTES, tenYears, tinHarbour } from "#seed/demo/index.ts";
import { referenceMotifs, referenceThemes } from "#seed/index.ts";
import { demoSources } from "#tests/support/demo-sources.ts";
import angles from "#seed/demo/data/angles.json" with { type: "json" };

/** A Wednesday in March, one in the summer holidays, a Saturday in autumn, New Year's Day. */
const DAYS = ["2026-03-11", "2026-08-05", "2026-11-28", "2027-01-01"].map(day);
const TODAY = day("2026-03-11");

const told = new Map(DAYS.map((today) => [today, tinHarbour(demoSources(today))]));
const foods = new Map(demoSources(TODAY).foods.map((food) => [food.id as string, food]));

function seriesOf(today: (typeof DAYS)[number]) {
  const series = told.get(today);
  if (!series) throw new Error("told above");
  const own = new Map(series.houseFoods.map((food) => [food.id as string, food]));
  const foodOf = (id: string) => {
    const food = foods.get(id) ?? own.get(id);
    if (!food) throw new Error(`${id} is in no catalogue`);
    return food;
  };
  const itemOf = new Map(series.lunchItems.map((item) => [item.id, item]));
  const lunchOf = new Map(series.lunches.map((lunch) => [lunch.id, lunch]));
  return { ...series, foodOf, itemOf, lunchOf };
}

describe.each(DAYS)("the demo loaded on %s", (today) => {
  const series = seriesOf(today);
  const thisMonday = mondayOf(today);

  test("has a year behind and four weeks ahead", () => {
    const mondays = series.episodes.map(({ weekOf }) => weekOf);
    expect((mondays[0] ?? today) <= weeksLater(thisMonday, -46)).toBe(true);
    for (const weeks of [-1, 0, 1, 2, 3]) expect(mondays).toContain(weeksLater(thisMonday, weeks));
    expect(mondays.at(-1)).toBe(weeksLater(thisMonday, 3));
    expect(series.episodes.map(({ number }) => number)).toEqual(
      mondays.map((_, index) => index + 1),
    );
    expect(mondays.length).toBeGreaterThanOrEqual(38);
    expect(mondays.length).toBeLessThanOrEqual(50);
  });

  test("locks this week and the next, pencils the rest, leaves one week partly empty", () => {
    const at = (weeks: number) =>
      series.episodes.find(({ weekOf }) => weekOf === weeksLater(thisMonday, weeks));
    for (const weeks of [-1, 0, 1]) expect(at(weeks)?.lockedAt).not.toBeNull();
    for (const weeks of [2, 3]) expect(at(weeks)?.lockedAt).toBeNull();
    const count = (weeks: number) =>
      series.lunches.filter(({ episodeId }) => episodeId === at(weeks)?.id).length;
    expect([0, 1, 2, 3].map(count)).toEqual([5, 5, 5, 3]);
    for (const { publishedOn, publishedAt, url } of series.episodes) {
      expect(publishedOn === null || publishedOn < today).toBe(true);
      expect(publishedAt === null).toBe(publishedOn === null);
      expect(url === "" || url.startsWith("https://video.example/")).toBe(true);
    }
  });

  test("packs on school days only, five to eight things, each lunch with an angle of its theme", () => {
    const byLunch = groupBy(series.lunchItems, ({ lunchId }) => lunchId);
    for (const { id, date, angle } of series.lunches) {
      expect(weekdayOf(date)).toBeLessThanOrEqual(5);
      expect(series.daysOff.some(({ from, to }) => from <= date && date <= to)).toBe(false);
      expect(angle).not.toBe("");
      const inTin = byLunch.get(id)?.filter(({ fate }) => fate !== "scrapped") ?? [];
      expect(inTin.length).toBeGreaterThanOrEqual(4);
      expect(inTin.length).toBeLessThanOrEqual(8);
    }
  });

  test("verdicts come from packed items of days gone by, for each child that got some", () => {
    for (const { itemId, childId, face, facePoints, quote } of series.reactions) {
      const item = series.itemOf.get(itemId);
      const lunch = series.lunchOf.get(item?.lunchId ?? "");
      expect(["packed", "stepped-in"]).toContain(item?.fate);
      expect((lunch?.date ?? today) < today).toBe(true);
      expect(face === null).toBe(facePoints === null);
      expect(
        quote === "" || QUOTES.some((one) => one.text === quote && one.child === childId),
      ).toBe(true);
    }
    for (const { fate, lunchId } of series.lunchItems)
      expect(fate === "planned").toBe((series.lunchOf.get(lunchId)?.date ?? today) >= today);
  });

  test("Pepper never gets sesame", () => {
    const shareOf = new Map(series.itemShares.map((s) => [`${s.itemId} ${s.childId}`, s.amount]));
    const withSesame = series.lunchItems.filter(({ foodId }) =>
      series.foodOf(foodId).allergens.includes("sesame"),
    );
    expect(withSesame.length).toBeGreaterThan(0);
    for (const { id } of withSesame) {
      expect(shareOf.get(`${id} pepper`)).toBe(0);
      expect(series.reactions.some((r) => r.itemId === id && r.childId === "pepper")).toBe(false);
    }
    for (const product of series.products)
      if (!series.foodOf(product.foodId).allergens.includes("sesame"))
        expect([...product.allergens, ...product.maybe]).not.toContain("sesame");
  });

  test("one planned item of next week breaks the school's rules, and nothing else does", () => {
    const breaking = series.lunchItems.filter(({ foodId }) => {
      const { traits, allergens, maybeAllergens } = series.foodOf(foodId);
      return (
        traits.some((trait) => ["nuts", "in-glass", "fizzy"].includes(trait)) ||
        [...allergens, ...maybeAllergens].some((one) => one === "tree-nut" || one === "peanut")
      );
    });
    expect(breaking.map(({ foodId, fate }) => [foodId, fate])).toEqual([["almonds", "planned"]]);
    expect(series.lunchOf.get(breaking[0]?.lunchId ?? "")?.date).toBe(
      addDays(weeksLater(thisMonday, 1), 1),
    );
  });

  test("grapes and cherry tomatoes are always quartered", () => {
    const tricksOf = groupBy(series.itemTricks, ({ itemId }) => itemId);
    const round = series.lunchItems.filter(
      ({ foodId, fate }) => fate !== "scrapped" && /^(grapes|cherry-tomatoes)$/.test(foodId),
    );
    for (const { id } of round)
      expect(tricksOf.get(id)?.map(({ trickId }) => trickId)).toContain("quarters-lengthwise");
  });

  test("private names appear nowhere but in their own field", () => {
    const { children, ...rest } = told.get(today) ?? series;
    const withoutPrivate = children.map((one) => ({ ...one, privateName: undefined }));
    const shown = JSON.stringify([rest, withoutPrivate]);
    for (const { privateName } of children)
      expect(shown).not.toMatch(new RegExp(`\\b${privateName}\\b`, "i"));
  });

  test("what was scrapped is told why; what stepped in points at it; what is settled is past", () => {
    const owed = series.lunchItems.filter(
      ({ owedUseBy, settledOn }) => owedUseBy !== null && settledOn === null,
    );
    expect(owed.some(({ owedUseBy }) => (owedUseBy ?? today) > today)).toBe(true);
    for (const { fate, reason, insteadOfId, lunchId, settledOn } of series.lunchItems) {
      if (fate === "scrapped" || fate === "stepped-in") expect(reason).not.toBe("");
      if (insteadOfId !== null) {
        expect(series.itemOf.get(insteadOfId)).toMatchObject({ fate: "scrapped", lunchId });
        expect(fate).toBe("stepped-in");
      }
      expect(settledOn === null || settledOn < today).toBe(true);
    }
  });

  test("every pointer leads somewhere", () => {
    const sources = demoSources(today);
    const ids = (rows: readonly { readonly id: string }[]) => new Set(rows.map(({ id }) => id));
    const [products, shops, episodes] = [
      ids(series.products),
      ids(series.shops),
      ids(series.episodes),
    ];
    const [tricks, themes] = [ids(sources.tricks), ids(sources.themes)];
    for (const { themeId } of series.episodes) expect(themes.has(themeId)).toBe(true);
    for (const { episodeId } of series.lunches) expect(episodes.has(episodeId)).toBe(true);
    for (const { foodId, productId } of [...series.lunchItems, ...series.stock]) {
      expect(series.foodOf(foodId)).toBeDefined();
      expect(productId === null || products.has(productId)).toBe(true);
    }
    for (const { itemId, trickId } of series.itemTricks)
      expect(series.itemOf.has(itemId) && tricks.has(trickId)).toBe(true);
    for (const { productId, shopId } of series.prices)
      expect(products.has(productId) && shops.has(shopId)).toBe(true);
    for (const { episodeId } of series.promises)
      expect(episodeId === null || episodes.has(episodeId)).toBe(true);
    for (const rows of [series.lunchItems, series.lunches, series.products, series.prices])
      expect(ids(rows).size).toBe(rows.length);
    const pairs = series.reactions.map(({ itemId, childId }) => `${itemId} ${childId}`);
    expect(new Set(pairs).size).toBe(pairs.length);
  });

  test("foods and themes are in season", () => {
    const seasonOf = new Map(referenceThemes().map(({ id, season }) => [id, season]));
    for (const { themeId, weekOf } of series.episodes) {
      const season = seasonOf.get(themeId);
      expect(season && overlapsSeason(season, weekOf, addDays(weekOf, 4))).toBe(true);
    }
    const away = series.lunchItems.filter(({ foodId, lunchId }) => {
      const months = series.foodOf(foodId).seasonMonths;
      const date = series.lunchOf.get(lunchId)?.date ?? today;
      return months !== null && !months.includes(partsOf(date)[1]);
    });
    // Last Wednesday's beetroot and its pear are the only ones fixed by the story.
    expect(away.filter(({ foodId }) => foodId !== "beets" && foodId !== "pear")).toEqual([]);
  });
});

describe("the bank", () => {
  test("has at least 150 different quotes, of every mood, for both children", () => {
    expect(new Set(QUOTES.map(({ text }) => text)).size).toBeGreaterThanOrEqual(150);
    for (const child of ["biscuit", "pepper"])
      for (const mood of ["love", "good", "meh", "no", "full"])
        expect(
          QUOTES.filter((quote) => quote.child === child && quote.mood === mood).length,
        ).toBeGreaterThanOrEqual(4);
    for (const { text } of QUOTES) {
      expect(text).not.toMatch(/healthy|\bsafe\b|Ines|Tomas/i);
      expect(text.length).toBeLessThanOrEqual(110);
    }
  });
  test("has five angles or more for every theme, none twice", () => {
    const all = Object.values(angles).flat();
    expect(new Set(all).size).toBe(all.length);
    for (const { id } of referenceThemes())
      expect((angles as Record<string, string[]>)[id]?.length ?? 0).toBeGreaterThanOrEqual(5);
    expect(referenceMotifs().length).toBeGreaterThan(0);
  });
});

test("the same day and catalogue tell the same series", () => {
  const [once, again] = [tinHarbour(demoSources(TODAY)), told.get(TODAY)];
  expect(JSON.stringify(once)).toBe(JSON.stringify(again));
  expect(once.truthFor("pepper", "kiwifruit")).toBe(again?.truthFor("pepper", "kiwifruit"));
});

test("a long series has as many weeks and children as asked for", () => {
  const { lunches, lunchItems, reactions, children, episodes } = tenYears(demoSources(TODAY), {
    children: 3,
    weeks: 40,
  });
  expect(children.map(({ onScreenName }) => onScreenName)).toEqual([
    "Biscuit",
    "Pepper",
    "Crumb 1",
  ]);
  expect([episodes.length, lunches.length]).toEqual([40, 200]);
  // Ten years at this rate: some 18,000 items and 54,000 reactions.
  expect(lunchItems.length / 40).toBeGreaterThan(17_500 / 520);
  expect(reactions.length).toBeGreaterThan(2.95 * lunchItems.length);
});
