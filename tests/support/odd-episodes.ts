import fc from "fast-check";
import { addDays, day } from "#lib/calendar/index.ts";
import type { DraftItem, DraftLunch, EpisodeRecords } from "#lib/drafts/index.ts";

/** Foods whose names trip templates, grammars and screens. */
const ODD_FOODS = [
  ["egg", "egg"],
  ["apple", "apple"],
  ["hour-old bun", "bun"],
  ["unicorn cake", "cake"],
  ["European plum", "plum"],
  ["8-cut pie", "pie"],
  ["honest roll", "roll"],
  ["one-pot rice", null],
  ["UFO cookie", "cookie"],
  ["X-ray jelly", null],
  ["hummus", null],
  ["asparagus", null],
  ["salmon", null],
  ["cucumber slices", "slice"],
  ["macaroni and cheese", null],
  ["fish, smoked", null],
  ["crème brûlée", null],
  ["Grandma’s soup", null],
  ["the big loaf", "loaf"],
  ["🍎", null],
  ["🥕 sticks", "stick"],
  ["فلافل", null],
  ["חומוס", null],
  ["  spaced   name ", null],
  ["<b>bold</b> bun", "bun"],
  ["“quoted” bar", "bar"],
  ["{{ opener }} dip", null],
  ["*starred* _bread_", null],
  ["radish", "radish"],
  ["potato", "potato"],
] as const;

const ON_SCREEN = [
  "Biscuit",
  "Pepper",
  "O’Neil",
  "Chess",
  "بسكويت",
  "Zizou 🦄",
  "Crumb 1",
] as const;
const PRIVATE = ["Ines", "Zoë", "Tomas", "Will", "愛子", "Anne-Marie", "Åsa"] as const;

const QUOTES = [
  "",
  "",
  "It was good. I ate it.",
  "Gone!",
  "<script>alert(1)</script>",
  "He said “no” and left",
  "طيب جدا",
  "😋😋",
  "{{ day.foods }} and {% if %}",
  "I  like   space\nand lines",
  "Is it Friday?",
  "Not bad…",
] as const;

const REASONS = ["", "The lid stuck", "stale by morning", "It fell; the dog was quicker."] as const;
const TITLES = [
  "Tide Pool",
  "Owls",
  "an evening",
  "عيد",
  "A & B <i>week</i>",
  "🎈",
  "Ends with dot.",
];
const SHOPS = [null, "Quayside Greens", "Miller & Daughter", "متجر"] as const;
const MONDAY = day("2026-03-09");

const oddText = (texts: readonly string[]) => fc.constantFrom(...texts);

const itemOf = (id: string): fc.Arbitrary<DraftItem> =>
  fc
    .record({
      food: fc.constantFrom(...ODD_FOODS),
      count: fc.constantFrom(null, 0.5, 1, 1, 2, 3),
      fate: fc.constantFrom("planned", "packed", "packed", "packed", "scrapped", "stepped-in"),
      reason: oddText(REASONS),
      trick: fc.constantFrom(null, "star cutter", "leaf cutter", "eye picks", "envelope fold"),
      shop: fc.constantFrom(...SHOPS),
      provenance: fc.constantFrom("bought", "bought", "bought", "gifted", "sponsored", "affiliate"),
      notFor: fc.subarray(["c0", "c1"]),
    })
    .map(({ food: [food, countUnit], trick, provenance, ...rest }) => ({
      ...{ id, foodId: `food ${food}`, food, countUnit, ...rest, insteadOfId: null },
      tricks:
        trick === null
          ? []
          : [{ id: trick.replaceAll(" ", "-"), name: trick, kind: kindOf(trick) }],
      product: { id: `product ${food}`, name: food, provenance, disclosure: "" },
      ...{ allergens: ["milk", "tree-nut"], maybeAllergens: ["egg"] },
    }));

function kindOf(trick: string): string {
  if (trick.endsWith("cutter")) return "cutter";
  return trick.endsWith("picks") ? "pick" : "cut";
}

const lunchOf = (index: number): fc.Arbitrary<DraftLunch> =>
  fc
    .record({
      angle: oddText(["", "", "Sealed “envelope”", "رسالة", "Low water"]),
      isPacked: fc.constantFrom(true, true, true, false),
      minutesUsed: fc.constantFrom(null, 1, 22, 7.4, 0.2),
      items: fc
        .integer({ min: 0, max: 6 })
        .chain((count) =>
          fc.tuple(...Array.from({ length: count }, (_, at) => itemOf(`i${index}-${at}`))),
        ),
      allScrapped: fc.integer({ min: 0, max: 9 }).map((one) => one === 0),
    })
    .map(({ allScrapped, items, ...lunch }) => ({
      ...{ id: `l${index}`, date: addDays(MONDAY, index), ...lunch },
      items: paired(
        uniqueFoods(items).map((item) =>
          allScrapped ? { ...item, fate: "scrapped" as const } : item,
        ),
      ),
    }));

/** A food stands in a lunch once. */
function uniqueFoods(items: readonly DraftItem[]): DraftItem[] {
  return items.filter((item, at) => items.findIndex((one) => one.foodId === item.foodId) === at);
}

/** What stepped in stands in for something that stayed out, where anything did. */
function paired(items: readonly DraftItem[]): DraftItem[] {
  const out = items.filter((item) => item.fate === "scrapped");
  let next = 0;
  return items.map((item) => {
    if (item.fate !== "stepped-in") return item;
    const other = out[next];
    next += 1;
    return { ...item, insteadOfId: other?.id ?? null };
  });
}

/** Episodes as odd as they come: nothing logged, all scrapped, one child absent, every kind of name. */
export const oddEpisode: fc.Arbitrary<EpisodeRecords> = fc
  .record({
    lunches: fc
      .integer({ min: 0, max: 5 })
      .chain((count) => fc.tuple(...Array.from({ length: count }, (_, at) => lunchOf(at)))),
    names: fc.shuffledSubarray([...ON_SCREEN], { minLength: 2, maxLength: 2 }),
    privateNames: fc.shuffledSubarray([...PRIVATE], { minLength: 2, maxLength: 2 }),
    childCount: fc.constantFrom(0, 1, 2, 2, 2),
    logging: fc.constantFrom("none", "some", "all", "all"),
    absent: fc.boolean(),
    eaten: fc.array(fc.constantFrom(0, 1, 2, 3, 4, 4, 4, 4), { minLength: 60, maxLength: 60 }),
    quotes: fc.array(oddText(QUOTES), { minLength: 60, maxLength: 60 }),
    namesIt: fc.integer({ min: 0, max: 59 }),
    ...{ title: oddText(TITLES), number: fc.integer({ min: 1, max: 600 }) },
    lunchesBefore: fc.constantFrom(0, 14, 47, 98, 249),
    seen: fc.constantFrom("never", "lately", "long ago"),
    ...{
      signOff: oddText(["", "Shut the lid!"]),
      tone: fc.constantFrom("warm", "plain", "playful"),
    },
    today: fc.integer({ min: 0, max: 7 }),
    nextTitle: fc.constantFrom(null, "Night Train", "Owls"),
  })
  .map((odd) => {
    const children = odd.names.slice(0, odd.childCount).map((onScreenName, at) => ({
      ...{ id: `c${at}`, onScreenName, privateName: odd.privateNames[at] ?? "Ines" },
    }));
    let draw = 0;
    const reactions = odd.lunches.flatMap((lunch) =>
      lunch.items.flatMap((item) =>
        children.flatMap(({ id, privateName }, at) => {
          draw += 1;
          if (odd.logging === "none" || (odd.absent && at === 1)) return [];
          if (odd.logging === "some" && draw % 3 === 0) return [];
          const quote = odd.quotes[draw % 60] ?? "";
          return [
            {
              ...{ itemId: item.id, childId: id, face: null },
              eaten: draw % 7 === 0 ? null : (odd.eaten[draw % 60] ?? 4),
              quote: draw % 60 === odd.namesIt ? `${privateName} took my ${quote}` : quote,
            },
          ];
        }),
      ),
    );
    const last = odd.seen === "lately" ? addDays(MONDAY, -9) : addDays(MONDAY, -150);
    return {
      ...{ id: "e", number: odd.number, weekOf: MONDAY, title: odd.title },
      ...{ surprise: "a brass whistle", revealOn: null, seriesName: "Tin Harbour" },
      ...{ seriesStartedOn: day("2025-03-11"), today: addDays(MONDAY, odd.today) },
      ...{ lunches: odd.lunches, children, reactions, promises: [] },
      lastPacked:
        odd.seen === "never"
          ? new Map()
          : new Map(ODD_FOODS.map(([food]) => [`food ${food}`, last])),
      ...{ lunchesBefore: odd.lunchesBefore, nextTitle: odd.nextTitle },
      voice: {
        ...{ signOn: "", signOff: odd.signOff, housePhrases: [], tone: odd.tone, emoji: false },
        ...{ wordsPerMinute: 150, privateWords: [...odd.privateNames, "Lamp Street School"] },
      },
    };
  });
