import { describe, expect, it } from "vitest";
import { day } from "#lib/calendar/index.ts";
import {
  draftOf,
  factsOf,
  guardsOf,
  staleOf,
  textOf,
  type EpisodeRecords,
} from "#lib/drafts/index.ts";

const WEEK: EpisodeRecords = {
  id: "e1",
  theme: "harbour  picnic",
  shootDay: day("2026-03-09"),
  today: day("2026-03-14"),
  lunches: [
    {
      id: "l1",
      day: day("2026-03-11"),
      items: [
        { id: "i1", food: "carrots", fate: "packed", weeksSince: 6 },
        { id: "i2", food: "plums", fate: "scrapped", weeksSince: null },
        { id: "i3", food: "rye rolls", fate: "swapped", weeksSince: null },
      ],
    },
  ],
  children: [{ id: "c1", onScreenName: "Pip" }],
  reactions: [{ id: "r1", itemId: "i1", childId: "c1", quarters: 4, quote: "<b>crunchy</b>" }],
  products: [{ id: "p1", name: "the tin box", provenance: "gifted" }],
};

describe("drafts", () => {
  it("tells what was packed after the shoot, disclosure first, and nothing scrapped", () => {
    expect(textOf(draftOf("week recap", factsOf(WEEK)))).toBe(
      "We were given the tin box for free. This week's theme is harbour picnic. " +
        "On Wednesday we packed carrots and rye rolls. After 6 weeks away, we brought back carrots. " +
        "It was the first time on the show for rye rolls. " +
        "Pip finished all of the carrots. Pip on the carrots: “<b>crunchy</b>”",
    );
  });

  it("says will before the shoot and tells no verdict", () => {
    const text = textOf(draftOf("week recap", factsOf({ ...WEEK, today: day("2026-03-08") })));
    expect(text).toContain("we will pack carrots");
    expect(text).not.toMatch(/packed|finished|crunchy/u);
  });

  it("turns exactly the drafts stale that tell a changed verdict", () => {
    const facts = factsOf(WEEK);
    const [first] = WEEK.reactions;
    const later = factsOf({ ...WEEK, reactions: first ? [{ ...first, quarters: 2 }] : [] });
    expect(staleOf(draftOf("description", facts), later)).toEqual({ outdated: [], missing: [] });
    const recap = staleOf(draftOf("week recap", facts), later);
    expect(recap.outdated.map((one) => one.text)).toEqual(["Pip finished all of the carrots."]);
    expect(staleOf(draftOf("week recap", later), facts).missing).toHaveLength(1);
  });

  it.each([
    ["Zoë’s lunch.", "Zoë"],
    ["ZOE ate.", "ZOE"],
    ["Z\u200Boe\u0301 ate.", "Z\u200Boe\u0301"],
  ])("finds the private name in %j", (text, found) => {
    const draft = { kind: "lunch post" as const, sentences: [{ text, refs: [], facts: {} }] };
    const [hit] = guardsOf(draft, [], ["Zoë"]);
    expect(hit?.kind).toBe("private word");
    expect(text.slice(...(hit?.where ?? [])).trimEnd()).toBe(found);
  });

  it("leaves other words alone, and warns of promises and missing disclosures (16 CFR 255.5)", () => {
    const sentences = [{ text: "Zoetropes are a healthy hobby, link below.", refs: [], facts: {} }];
    const kinds = guardsOf({ kind: "lunch post", sentences }, factsOf(WEEK), ["Zoë"]);
    expect(kinds.map((one) => one.kind)).toEqual(["promise of safety", "no link", "no disclosure"]);
    expect(guardsOf(draftOf("week recap", factsOf(WEEK)), factsOf(WEEK), ["Zoë"])).toEqual([]);
  });
});
