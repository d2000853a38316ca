import { describe, expect, test } from "vitest";
import { ALLERGENS } from "#lib/catalog/index.ts";
import {
  checkLunch,
  EU_FOURTEEN,
  findStandIns,
  hardFilter,
  judgeFindings,
  listsNaming,
  US_NINE,
  type Avoidance,
  type BoxItem,
  type Finding,
} from "#lib/safety/index.ts";
import { EU_LIST, NO_LONGER_TREE_NUTS, TREE_NUTS, US_LIST } from "./allergens.published.ts";
import { child, food, FOODS, item, lunch, WEDNESDAY } from "./box.ts";

const check = (avoidance: Avoidance, ...items: readonly BoxItem[]): Finding[] =>
  checkLunch(lunch(...items), {
    children: [child({ avoidances: [avoidance] })],
    rules: [],
    journey: null,
    scheme: "off",
  });

describe("the lists of the law", () => {
  test.each(US_LIST)("the US nine hold %s", (tag) => {
    expect(US_NINE.some(({ tags }) => tags.includes(tag))).toBe(true);
    expect(listsNaming(tag)).toContain("us-nine");
  });
  test.each(EU_LIST.map((tags, index) => ({ point: index + 1, tags })))(
    "Annex II point $point is $tags",
    ({ point, tags }) => {
      expect(EU_FOURTEEN[point - 1]?.tags).toEqual(tags);
    },
  );
  test("hold nine and fourteen, peanuts apart from tree nuts, coconut on neither", () => {
    expect([US_NINE.length, EU_FOURTEEN.length]).toEqual([9, 14]);
    expect(US_NINE.find(({ tags }) => tags.includes("tree-nut"))?.tags).toEqual(["tree-nut"]);
    expect(listsNaming("coconut")).toEqual([]);
    expect(listsNaming("mollusc")).toEqual(["eu-fourteen"]);
    expect(ALLERGENS.filter((tag) => listsNaming(tag).length === 0)).toEqual(["coconut"]);
  });
  test.each(TREE_NUTS)("%s is a tree nut (FDA Edition 5)", (id) => {
    const [finding] = check({ allergen: "tree-nut", severity: "severe" }, item(id));
    expect(finding).toMatchObject({ level: "stop", mayKeep: false });
    expect(check({ allergen: "peanut", severity: "avoid" }, item(id))).toEqual([]);
  });
  test.each(NO_LONGER_TREE_NUTS)("%s is no tree nut, and says whom to ask", (id) => {
    const findings = check({ allergen: "tree-nut", severity: "allergy" }, item(id));
    expect(findings.map(({ level }) => level)).toEqual(["note"]);
    expect(findings[0]?.sentence).toContain("doctor");
  });
});

describe("what a child avoids", () => {
  test.each([
    ["severe", "stop", false],
    ["allergy", "stop", false],
    ["avoid", "look", true],
    ["dislike", "note", true],
  ] as const)("%s is a %s; a note may keep it: %s", (severity, level, mayKeep) => {
    expect(check({ allergen: "sesame", severity }, item("hummus"))).toMatchObject([
      { level, mayKeep },
    ]);
    expect(check({ food: food("hummus").id, severity }, item("hummus"))).toMatchObject([
      { level, mayKeep },
    ]);
    expect(check({ family: food("hummus").family, severity }, item("hummus"))).toMatchObject([
      { level, mayKeep },
    ]);
  });
  test("some makes: check the label; a recorded label that is silent leaves a note, never nothing", () => {
    const sesame = { allergen: "sesame", severity: "severe" } as const;
    expect(check(sesame, item("white-bread"))).toMatchObject([{ level: "look", mayKeep: false }]);
    const label = { name: "House loaf", allergens: [], maybeAllergens: [], traits: [] };
    expect(check(sesame, item("white-bread", { product: label }))).toMatchObject([
      { level: "look" },
    ]);
    const read = { ...label, allergens: ["wheat"] as const };
    expect(check(sesame, item("white-bread", { product: read }))).toMatchObject([
      { level: "note" },
    ]);
    const listed = { ...read, maybeAllergens: ["sesame"] as const };
    expect(check(sesame, item("white-bread", { product: listed }))).toMatchObject([
      { level: "look" },
    ]);
  });
  test("what a product's record adds counts as held", () => {
    const product = {
      name: "Oat bar",
      allergens: ["milk"],
      maybeAllergens: [],
      traits: [],
    } as const;
    expect(
      check({ allergen: "milk", severity: "allergy" }, item("banana", { product })),
    ).toMatchObject([{ level: "stop" }]);
  });
  test("when only the other child gets it: keep boards, knives and boxes apart", () => {
    const children = [
      child({ avoidances: [{ allergen: "sesame", severity: "allergy" }] }),
      child({ id: "biscuit", name: "Biscuit" }),
    ];
    const found = (notFor: readonly string[]) =>
      checkLunch(lunch(item("hummus", { notFor })), {
        children,
        rules: [],
        journey: null,
        scheme: "off",
      });
    expect(found(["pepper"])).toMatchObject([{ kind: "cross-contact", level: "look" }]);
    expect(found(["pepper"])[0]?.sentence).toContain("Hummus for Biscuit");
    expect(found(["pepper", "biscuit"])).toEqual([]);
    expect(found([])).toMatchObject([{ kind: "allergen", level: "stop" }]);
  });
});

describe("a note that keeps a finding", () => {
  test("never holds against an allergy, and ends when another food joins", () => {
    const severe = check({ allergen: "sesame", severity: "severe" }, item("hummus"));
    const kept = new Map(severe.map(({ key }) => [key, "I know"]));
    expect(judgeFindings(severe, kept)[0]?.keptBecause).toBeNull();
    const avoid = { allergen: "sesame", severity: "avoid" } as const;
    const one = check(avoid, item("hummus"));
    const notes = new Map(one.map(({ key }) => [key, "a little is fine"]));
    expect(judgeFindings(one, notes)[0]?.keptBecause).toBe("a little is fine");
    const two = check(avoid, item("hummus"), item("tahini"));
    expect(judgeFindings(two, notes)[0]?.keptBecause).toBeNull();
  });
  test("sorts the most serious first and what is kept last", () => {
    const findings = checkLunch(lunch(item("hummus"), item("popcorn"), item("white-bread")), {
      children: [
        child({
          ageMonths: 40,
          avoidances: [
            { allergen: "wheat", severity: "avoid" },
            { allergen: "sesame", severity: "allergy" },
          ],
        }),
      ],
      rules: [],
      journey: null,
      scheme: "off",
    });
    const judged = judgeFindings(findings, new Map());
    expect(judged.map(({ level }) => level)).toEqual(["stop", "stop", "look", "look"]);
    expect(judged[0]?.kind).toBe("allergen");
    const popcorn = judged.find(({ kind }) => kind === "choking");
    const notes = new Map([[popcorn?.key ?? "", "ground to crumbs"]]);
    expect(judgeFindings(findings, notes).at(-1)?.kind).toBe("choking");
  });
});

describe("stand-ins", () => {
  const ground = {
    children: [child({ avoidances: [{ allergen: "sesame", severity: "allergy" }] })],
    rules: [],
    day: WEDNESDAY,
    themeMotifs: [] as string[],
  };
  test("play the same part, pass the hard filter, and those of the theme come first", () => {
    const out = { food: food("hummus"), part: "dip" } as const;
    const isAllowed = hardFilter(ground.children, [], WEDNESDAY);
    const plain = findStandIns(out, FOODS, ground, 20);
    expect(plain.length).toBeGreaterThan(3);
    for (const one of plain)
      expect([one.id, one.parts.includes("dip"), isAllowed(one)]).toEqual([one.id, true, true]);
    const last = plain.at(-1);
    const motif = last?.motifs[0];
    if (motif === undefined) throw new Error("The last stand-in should carry a motif.");
    const themed = findStandIns(out, FOODS, { ...ground, themeMotifs: [motif] }, 20);
    expect(themed[0]?.motifs).toContain(motif);
  });
});

describe("a food whose name speaks of what its record leaves out", () => {
  const twist = { ...food("apple"), name: "Tahini twist" };
  const named = { ...item("apple"), food: twist };

  test("is asked about, by the words of the name", () => {
    const [finding] = check({ allergen: "sesame", severity: "severe" }, named);
    expect(finding).toMatchObject({ level: "look", mayKeep: false });
    expect(finding?.sentence).toBe(
      "The name of Tahini twist speaks of sesame, the record in the Larder does not, and Pepper must not have it.",
    );
    expect(check({ allergen: "sesame", severity: "avoid" }, named)).toEqual([]);
  });

  test("is not proposed to a child with the allergy", () => {
    const avoiding = child({ avoidances: [{ allergen: "sesame", severity: "allergy" }] });
    expect(hardFilter([avoiding], [], WEDNESDAY)(twist)).toBe(false);
  });

  test("is not asked about once the record speaks of it", () => {
    const told = { ...named, food: { ...twist, maybeAllergens: ["sesame" as const] } };
    const keys = check({ allergen: "sesame", severity: "severe" }, told).map(({ key }) => key);
    expect(keys).toEqual(["label:pepper:sesame:apple"]);
  });
});
