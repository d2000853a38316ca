import { describe, expect, it } from "vitest";
import { addDays, day } from "#lib/calendar/index.ts";
import type { Context } from "#lib/use-cases/context.ts";
import { keepBoardPost, loadBoardPost, publishBoardPost } from "#lib/use-cases/keep-board-post.ts";
import { loadBoard } from "#lib/use-cases/load-board.ts";
import { dropDraft, saveDraft, settleFinding, updateDraft } from "#lib/use-cases/save-draft.ts";
import { testContext } from "#tests/support/test-context.ts";

const MONDAY = day("2026-03-02");
const ASK = {
  ...{ foodId: "pear", themeId: undefined, from: undefined, to: undefined, chosen: [] },
} as const;

/** Two lunches with a pear: finished on Monday, half eaten on Tuesday. */
async function twoPears(surprise = ""): Promise<Context> {
  const context = testContext();
  const { db, now } = context;
  await db.series.create({ data: { id: 1, name: "Harbour Boxes", startedOn: "2026-01-05" } });
  await db.child.create({ data: { id: "c1", privateName: "Ines", onScreenName: "Biscuit" } });
  await db.episode.create({
    data: {
      ...{ id: "e1", number: 4, weekOf: MONDAY, workingTitle: "Night Train", surprise },
      surpriseRevealOn: "2026-04-01",
      lunches: {
        create: [0, 1].map((index) => ({
          ...{ id: `l${index}`, date: addDays(MONDAY, index), packedAt: now },
          items: {
            create: [
              {
                ...{ id: `i${index}`, foodId: "pear", part: "fruit", amount: 1, unit: "pear" },
                fate: "packed",
              },
              { id: `j${index}`, foodId: "rye-bread", part: "grain", amount: 60, fate: "packed" },
            ],
          },
        })),
      },
    },
  });
  await db.reaction.createMany({
    data: [0, 1].map((index) => ({
      ...{ itemId: `i${index}`, childId: "c1", eaten: index === 0 ? 4 : 2, loggedAt: now },
    })),
  });
  return context;
}

async function kept(context: Context): Promise<string> {
  const { choice } = await loadBoard(context, ASK);
  const outcome = await keepBoardPost(context, {
    foodId: choice.foodId,
    lunchIds: [...choice.lunchIds],
  });
  if (!outcome.ok) throw new Error(outcome.problem.kind);
  return outcome.value;
}

async function postOf(context: Context, id: string) {
  const view = await loadBoardPost(context, id);
  if (!view) throw new Error("a post was expected");
  return view;
}

describe("posts of the board", () => {
  it("are kept with the records behind each sentence, and listed", async () => {
    const context = await twoPears();
    const id = await kept(context);
    const { piece } = await postOf(context, id);
    expect(piece.body).toBe(
      [
        "Twice we packed pears:",
        "",
        "1. 2 March, Night Train: beside rye bread. Biscuit finished it.",
        "2. 3 March, Night Train: beside rye bread. Biscuit ate half of it.",
        "",
        "Biscuit finished them once in two tries.",
      ].join("\n"),
    );
    expect(piece.open).toBe(0);
    expect(piece.lines.flat().every(({ facts }) => facts.length > 0)).toBe(true);
    expect(piece.records.map(({ href }) => href)).toContain("/verdicts/2026-03-03");
    const { posts } = await loadBoard(context, ASK);
    expect(posts).toEqual([
      {
        ...{ id, title: "Twice we packed pears:", open: 0 },
        ...{ isStale: false, publishedOn: null },
      },
    ]);
  });

  it("turn stale with a record they tell of and with no other, and keep the user’s own words", async () => {
    const context = await twoPears();
    const id = await kept(context);
    const key = { kind: "board", post: id } as const;
    const { piece } = await postOf(context, id);
    const body = `${piece.body}\nMore of those, please.`;
    expect((await saveDraft(context, { ...key, revision: 1, body })).ok).toBe(true);
    expect((await saveDraft(context, { ...key, revision: 1, body: "Other." })).ok).toBe(false);
    const bread = { where: { id: "j0" }, data: { reason: "the last slice" } };
    await context.db.lunchItem.update(bread);
    expect((await postOf(context, id)).piece.stale).toBeNull();
    await context.db.reaction.updateMany({ data: { eaten: 4 } });
    const stale = (await postOf(context, id)).piece;
    expect(stale.stale?.fresh).toContain("Biscuit finished them both times.");
    expect((await loadBoard(context, ASK)).posts[0]).toMatchObject({ open: 1, isStale: true });
    const update = { ...key, revision: 2, anew: false, choices: [] };
    expect((await updateDraft(context, update)).ok).toBe(true);
    const fresh = (await postOf(context, id)).piece;
    expect(fresh.stale).toBeNull();
    expect(fresh.body).toContain("Biscuit finished them both times.");
    expect(fresh.body).toContain("More of those, please.");
  });

  it("are held back by an open guard, and a late change becomes a correction", async () => {
    const context = await twoPears();
    const id = await kept(context);
    const key = { kind: "board", post: id } as const;
    const on = day("2026-03-10");
    const words = (await postOf(context, id)).piece.body;
    await saveDraft(context, { ...key, revision: 1, body: `${words}\nInes is proud.` });
    expect(await publishBoardPost(context, { ...key, revision: 2, on })).toMatchObject({
      problem: { kind: "open" },
    });
    const finding = (await postOf(context, id)).piece.checks
      .flatMap(({ findings }) => findings)
      .find(({ text }) => text.includes("private name"));
    // The second fix strikes the sentence.
    await settleFinding(context, { ...key, revision: 2, key: finding?.key ?? "", fix: 1 });
    const early = { ...key, revision: 3, on: day("2026-03-12") };
    expect(await publishBoardPost(context, early)).toMatchObject({ problem: { kind: "to-come" } });
    expect((await publishBoardPost(context, { ...key, revision: 3, on })).ok).toBe(true);
    expect(await postOf(context, id)).toMatchObject({ publishedOn: on, correction: "" });
    await context.db.reaction.update({
      ...{ where: { itemId_childId: { itemId: "i0", childId: "c1" } }, data: { eaten: 3 } },
    });
    const { correction } = await postOf(context, id);
    expect(correction).toContain(
      "The post said: Biscuit finished it. It should have said: Biscuit ate most of it.",
    );
    expect((await dropDraft(context, { ...key, revision: 3 })).ok).toBe(true);
    expect(await loadBoardPost(context, id)).toBeUndefined();
  });

  it("keep the surprise of the week they tell of until its day", async () => {
    const context = await twoPears("a pear with a paper whistle");
    const id = await kept(context);
    const key = { kind: "board", post: id } as const;
    await saveDraft(context, { ...key, revision: 1, body: "A pear hid a paper whistle." });
    const stopped = (await postOf(context, id)).piece.checks.filter(
      ({ kind, findings }) => kind === "surprise" && findings.length > 0,
    );
    expect(stopped).toHaveLength(1);
  });

  it("are refused when nothing was packed of what is asked", async () => {
    const context = await twoPears();
    const outcome = await keepBoardPost(context, { foodId: "pear", lunchIds: ["gone"] });
    expect(outcome).toEqual({ ok: false, problem: { kind: "nothing-told" } });
  });
});
