import { describe, expect, it } from "vitest";
import { addDays, day } from "#lib/calendar/index.ts";
import {
  compose,
  DEFAULT_TEMPLATES,
  DRAFT_KINDS,
  mergeDraft,
  stalenessOf,
  tellingOf,
  type Composed,
  type DraftItem,
  type DraftLunch,
  type EpisodeRecords,
} from "#lib/drafts/index.ts";
import { item, WEEK } from "./week.ts";

/** A week in which every value is a word of its own, so that a text that holds the word mentions the record. */
const LUNCHES: readonly DraftLunch[] = ["zmon", "ztue", "zwed"].map((name, at) => ({
  ...{ id: name, date: day(`2026-03-${String(9 + at).padStart(2, "0")}`), angle: `${name}angle` },
  ...{ isPacked: true, minutesUsed: 21 + at },
  items: [
    item({
      ...{ id: `${name}1`, food: `${name}bread`, shop: `${name}shop` },
      tricks: [{ id: `${name}t`, name: `${name}ribbon`, kind: "garnish" }],
    }),
    item({
      ...{ id: `${name}2`, food: `${name}cheese`, allergens: [`${name}allergen`] },
      maybeAllergens: [`${name}trace`],
      product: { id: `${name}p`, name: "x", provenance: "gifted", disclosure: `${name}gift.` },
    }),
    item({ id: `${name}3`, food: `${name}lost`, fate: "scrapped", reason: `${name}reason` }),
    item({ id: `${name}4`, food: `${name}pear`, fate: "stepped-in", insteadOfId: `${name}3` }),
  ],
}));

const EPISODE: EpisodeRecords = {
  ...WEEK,
  ...{ title: "ztitle", nextTitle: "znext", lunches: LUNCHES, seriesName: "zseries" },
  // The bread of each day was last on 20, 21 and 22 weeks before.
  lastPacked: new Map(
    LUNCHES.map(({ id, date }, at) => [`food-${id}bread`, addDays(date, -7 * (20 + at))]),
  ),
  promises: [{ id: "p1", what: "zpromise", dueOn: null, keptOn: day("2026-03-12") }],
  children: [
    { id: "c1", onScreenName: "Zpip", privateName: "Ines" },
    { id: "c2", onScreenName: "Zpop", privateName: "Tomas" },
  ],
  reactions: LUNCHES.flatMap(({ items }) =>
    items
      .filter(({ fate }) => fate !== "scrapped")
      .flatMap(({ id }) => [
        { itemId: id, childId: "c1", eaten: 4, face: null, quote: `${id}quote` },
        { itemId: id, childId: "c2", eaten: 2, face: null, quote: "" },
      ]),
  ),
};

type Piece = { readonly name: string; readonly draft: Composed };

function pieces(records: EpisodeRecords): Piece[] {
  const told = tellingOf(records);
  return DRAFT_KINDS.flatMap((kind) =>
    (kind === "lunch-post" ? LUNCHES.map(({ id }) => id) : [null]).map((lunchId) => {
      const composed = compose(told, DEFAULT_TEMPLATES[kind], lunchId);
      if (!composed.ok) throw new Error(composed.problem.message);
      return { name: `${kind} ${lunchId ?? ""}`, draft: composed.value };
    }),
  );
}

function staleAfter(records: EpisodeRecords): string[] {
  const now = new Map(pieces(records).map(({ name, draft }) => [name, draft]));
  return pieces(EPISODE)
    .filter(({ name, draft }) => stalenessOf(draft, now.get(name) ?? draft).isStale)
    .map(({ name }) => name);
}

function mentioning(word: string): string[] {
  return pieces(EPISODE)
    .filter(({ draft }) => draft.text.toLowerCase().includes(word.toLowerCase()))
    .map(({ name }) => name);
}

function withItem(id: string, change: Partial<DraftItem>): EpisodeRecords {
  const lunches = LUNCHES.map((lunch) => ({
    ...lunch,
    items: lunch.items.map((one) => (one.id === id ? { ...one, ...change } : one)),
  }));
  return { ...EPISODE, lunches };
}

function withLunch(id: string, change: Partial<DraftLunch>): EpisodeRecords {
  return {
    ...EPISODE,
    lunches: LUNCHES.map((one) => (one.id === id ? { ...one, ...change } : one)),
  };
}

function withReaction(itemId: string, childId: string, change: object): EpisodeRecords {
  const reactions = EPISODE.reactions.map((one) =>
    one.itemId === itemId && one.childId === childId ? { ...one, ...change } : one,
  );
  return { ...EPISODE, reactions };
}

function withLastPacked(lunchId: string): EpisodeRecords {
  const lastPacked = new Map(EPISODE.lastPacked).set(`food-${lunchId}bread`, day("2020-01-06"));
  return { ...EPISODE, lastPacked };
}

const DAYS = LUNCHES.map(({ id }) => id);
const MUTATIONS: readonly (readonly [string, string, EpisodeRecords])[] = [
  ...DAYS.flatMap((id): [string, string, EpisodeRecords][] => [
    ["food", `${id}bread`, withItem(`${id}1`, { food: "znew" })],
    ["shop", `${id}shop`, withItem(`${id}1`, { shop: "znew" })],
    ["scrapped food", `${id}lost`, withItem(`${id}3`, { food: "znew" })],
    ["reason", `${id}reason`, withItem(`${id}3`, { reason: "znew" })],
    ["stand-in", `${id}pear`, withItem(`${id}4`, { food: "znew" })],
    [
      "disclosure",
      `${id}gift`,
      withItem(`${id}2`, {
        product: { id: `${id}p`, name: "x", provenance: "gifted", disclosure: "znew." },
      }),
    ],
    [
      "way a product came",
      `${id}gift`,
      withItem(`${id}2`, {
        product: { id: `${id}p`, name: "x", provenance: "bought", disclosure: `${id}gift.` },
      }),
    ],
    [
      "trick",
      `${id}ribbon`,
      withItem(`${id}1`, { tricks: [{ id: "t", name: "znew", kind: "garnish" }] }),
    ],
    ["allergen", `${id}allergen`, withItem(`${id}2`, { allergens: ["znew"] })],
    ["allergen of some makes", `${id}trace`, withItem(`${id}2`, { maybeAllergens: ["znew"] })],
    ["earlier day of a food", `${20 + DAYS.indexOf(id)} weeks`, withLastPacked(id)],
    ["angle", `${id}angle`, withLunch(id, { angle: "znew" })],
    ["minutes", `${21 + DAYS.indexOf(id)} minutes`, withLunch(id, { minutesUsed: 40 })],
    ["quote", `${id}1quote`, withReaction(`${id}1`, "c1", { quote: "znew" })],
  ]),
  ["title", "ztitle", { ...EPISODE, title: "znew" }],
  ["name of the series", "zseries", { ...EPISODE, seriesName: "znew" }],
  ["number of the episode", "episode 7", { ...EPISODE, number: 37 }],
  [
    "promise",
    "zpromise",
    {
      ...EPISODE,
      promises: [{ id: "p1", what: "znew", dueOn: null, keptOn: day("2026-03-12") }],
    },
  ],
  ["next theme", "znext", { ...EPISODE, nextTitle: "znew" }],
  [
    "on-screen name",
    "zpip",
    {
      ...EPISODE,
      children: EPISODE.children.map((one) =>
        one.id === "c1" ? { ...one, onScreenName: "Znew" } : one,
      ),
    },
  ],
];

describe("stale drafts", () => {
  it.each(MUTATIONS)(
    "a changed %s turns exactly the drafts stale that hold “%s”",
    (_, word, records) => {
      expect(mentioning(word)).not.toEqual([]);
      expect(staleAfter(records)).toEqual(mentioning(word));
    },
  );

  it.each([
    ["a face", withReaction("zmon1", "c1", { face: 10 })],
    ["an allergen of a scrapped food", withItem("zmon3", { allergens: ["milk"] })],
    [
      "the trick of a scrapped food",
      withItem("zmon3", { tricks: [{ id: "a", name: "a", kind: "cut" }] }),
    ],
    ["the surprise", { ...EPISODE, surprise: "another" }],
  ])("%s is told nowhere and turns nothing stale", (_, records) => {
    expect(staleAfter(records)).toEqual([]);
  });

  it("a changed verdict turns stale what tells of it, says what it was and is, and no other day’s post", () => {
    const later = withReaction("zmon1", "c1", { eaten: 1 });
    const stale = staleAfter(later);
    expect(stale).toContain("lunch-post zmon");
    expect(stale).toContain("outline ");
    expect(stale).not.toContain("lunch-post ztue");
    expect(stale).not.toContain("shots ");
    const post = (records: EpisodeRecords) =>
      pieces(records).find(({ name }) => name === "lunch-post zmon")?.draft;
    const [then, now] = [post(EPISODE), post(later)];
    if (!then || !now) throw new Error("a post was expected");
    const { changes, outdated } = stalenessOf(then, now);
    expect(outdated).toHaveLength(1);
    expect(changes).toHaveLength(1);
    expect(changes[0]?.was).toContainEqual(["zmonbread", "all"]);
    expect(changes[0]?.now).toContainEqual(["zmonbread", "¼"]);
  });
});

describe("bringing a text up to date", () => {
  const line = (...texts: string[]) => texts.map((text) => ({ text, facts: [text] }));
  const written = [line("One.", "Two.", "Three."), [], line("Four.")];

  it("keeps the user’s words and takes over what the records changed elsewhere", () => {
    const now = [line("One.", "Two.", "Three new."), [], line("Four.")];
    const merge = mergeDraft("My own start. One. Two. Three.\n\nFour.\nBye.", written, now);
    expect(merge.conflicts).toEqual([]);
    expect(merge.text([])).toBe("My own start. One. Two. Three new.\n\nFour.\nBye.");
  });

  it("shows a conflict where both changed the same sentence, and follows the choice", () => {
    const now = [line("One.", "Two new.", "Three."), [], line("Four.")];
    const merge = mergeDraft("One. Two, my way. Three.\n\nFour.", written, now);
    expect(merge.conflicts).toEqual([{ mine: "Two, my way.", theirs: "Two new." }]);
    expect(merge.text(["mine"])).toBe("One. Two, my way. Three.\n\nFour.");
    expect(merge.text(["theirs"])).toBe("One. Two new. Three.\n\nFour.");
    expect(merge.text(["both"])).toBe("One. Two, my way. Two new. Three.\n\nFour.");
  });
});
