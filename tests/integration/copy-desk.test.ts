import { describe, expect, it } from "vitest";
import { day } from "#lib/calendar/index.ts";
import { writeSettings } from "#lib/db/index.ts";
import type { Context } from "#lib/use-cases/context.ts";
import { loadBoard } from "#lib/use-cases/load-board.ts";
import { loadFiles } from "#lib/use-cases/load-files.ts";
import { loadPack, loadPiece } from "#lib/use-cases/load-copy-desk.ts";
import { saveTemplate } from "#lib/use-cases/edit-template.ts";
import { markTimes } from "#lib/use-cases/mark-times.ts";
import { MarkTimesInput } from "#lib/use-cases/mark-times.input.ts";
import { publishEpisode } from "#lib/use-cases/publish-episode.ts";
import { keepDraft, saveDraft, settleFinding, updateDraft } from "#lib/use-cases/save-draft.ts";
import { testContext } from "#tests/support/test-context.ts";

const MONDAY = day("2026-03-02");
const KEY = { monday: MONDAY, kind: "description", lunchId: null } as const;

async function packedWeek(): Promise<Context> {
  const context = testContext();
  const { db } = context;
  await db.series.create({ data: { id: 1, name: "Harbour Boxes", startedOn: "2026-01-05" } });
  await db.child.create({ data: { id: "c1", privateName: "Ines", onScreenName: "Biscuit" } });
  await db.episode.create({
    data: {
      ...{ id: "e1", number: 4, weekOf: MONDAY, workingTitle: "Night Train" },
      lunches: {
        create: {
          ...{ id: "l1", date: MONDAY, packedAt: context.now, minutesUsed: 20 },
          items: {
            create: [
              { id: "i1", foodId: "rye-bread", part: "grain", amount: 60, fate: "packed" },
              { id: "i2", foodId: "pear", part: "fruit", amount: 1, unit: "pear", fate: "packed" },
            ],
          },
        },
      },
    },
  });
  await db.reaction.create({
    data: {
      ...{ itemId: "i1", childId: "c1", eaten: 4, quote: "The crust was the track" },
      loggedAt: context.now,
    },
  });
  return context;
}

async function description(context: Context) {
  const view = await loadPiece(context, MONDAY, "description", undefined);
  if (!view) throw new Error("a piece was expected");
  return view.piece;
}

describe("copy desk", () => {
  it("writes every piece of a week from its records, with nothing open and no private name", async () => {
    const pack = await loadPack(await packedWeek(), MONDAY);
    expect(pack?.pieces.map(({ kind }) => kind)).toContain("recap");
    expect(pack?.pieces.map(({ open }) => open)).toEqual(pack?.pieces.map(() => 0));
    const text = pack?.pieces.map(({ body }) => body).join("\n") ?? "";
    expect(text).toContain("“The crust was the track”");
    expect(text).toContain("a pear");
    expect(text).not.toContain("Ines");
  });

  it("keeps the user’s words; the second of two tabs is told and writes nothing", async () => {
    const context = await packedWeek();
    const body = "My own words.";
    expect((await saveDraft(context, { ...KEY, revision: 0, body })).ok).toBe(true);
    const second = await saveDraft(context, { ...KEY, revision: 0, body: "Other words." });
    expect(second).toEqual({ ok: false, problem: { kind: "changed-meanwhile" } });
    const piece = await description(context);
    expect(piece.body).toBe(body);
    expect(piece.lines.flat()).toEqual([{ text: body, facts: [], isOwn: true }]);
  });

  it("a changed verdict turns the kept draft stale; bringing it up to date keeps the user’s own sentence", async () => {
    const context = await packedWeek();
    const first = await description(context);
    const body = `${first.body}\nShut the lid!`;
    await saveDraft(context, { ...KEY, revision: 0, body });
    expect((await description(context)).stale).toBeNull();
    await context.db.reaction.updateMany({ data: { quote: "The crust was the tunnel" } });
    const stale = await description(context);
    expect(stale.open).toBe(1);
    expect(stale.stale?.conflicts).toEqual([]);
    expect(stale.stale?.changes.map(({ was, now }) => [was?.at(-1), now?.at(-1)])).toEqual([
      [
        ["Said", "The crust was the track"],
        ["Said", "The crust was the tunnel"],
      ],
    ]);
    const done = await updateDraft(context, { ...KEY, revision: 1, anew: false, choices: [] });
    expect(done.ok).toBe(true);
    const fresh = await description(context);
    expect(fresh.stale).toBeNull();
    expect(fresh.body).toContain("the tunnel");
    expect(fresh.body).toContain("Shut the lid!");
  });

  it("asks which way a passage goes that both sides changed", async () => {
    const context = await packedWeek();
    const first = await description(context);
    const said = first.lines.flat().find(({ text }) => text.includes("the track"))?.text ?? "";
    await saveDraft(context, {
      ...{ ...KEY, revision: 0, body: first.body.replace(said, "Biscuit spoke of tracks.") },
    });
    await context.db.reaction.updateMany({ data: { quote: "The crust was the tunnel" } });
    const undecided = await updateDraft(context, { ...KEY, revision: 1, anew: false, choices: [] });
    expect(undecided).toEqual({ ok: false, problem: { kind: "undecided" } });
    await updateDraft(context, { ...KEY, revision: 1, anew: false, choices: ["mine"] });
    expect((await description(context)).body).toContain("Biscuit spoke of tracks.");
  });

  it("mends a finding at one press, and lets a look-again be kept", async () => {
    const context = await packedWeek();
    await saveDraft(context, { ...KEY, revision: 0, body: "Ines was there. We had 12 guests." });
    const before = await description(context);
    expect(before.open).toBe(2);
    const find = (kind: string) =>
      before.checks.find((check) => check.kind === kind)?.findings[0]?.key ?? "";
    await settleFinding(context, { ...KEY, revision: 1, key: find("names"), fix: 0 });
    const guests = "records: We had 12 guests.";
    await settleFinding(context, { ...KEY, revision: 2, key: guests, fix: null });
    const after = await description(context);
    expect(after.body).toBe("Biscuit was there. We had 12 guests.");
    // The name on screen is a claim too, and nobody kept that one yet.
    expect(after.open).toBe(1);
  });

  it("publishing keeps every public piece; a late change becomes a correction note", async () => {
    const context = await packedWeek();
    const input = {
      monday: MONDAY,
      revision: 1,
      on: day("2026-03-10"),
      url: "https://video.example/4",
    };
    expect((await publishEpisode(context, { ...input, on: day("2026-03-12") })).ok).toBe(false);
    expect((await publishEpisode(context, input)).ok).toBe(true);
    expect((await publishEpisode(context, input)).ok).toBe(false);
    expect((await loadPack(context, MONDAY))?.correction).toBe("");
    await context.db.reaction.updateMany({ data: { eaten: 2 } });
    const pack = await loadPack(context, MONDAY);
    expect(pack?.stage).toBe("published");
    expect(pack?.correction).toMatch(/^A correction\.\n/u);
    expect(pack?.correction).toContain("ate half of the rye bread");
    expect(pack?.correction).toMatch(/^The video and the lunch post said: /mu);
  });

  it("the correction stays when the piece is brought up to date, and speaks of nothing that was struck before", async () => {
    const context = await packedWeek();
    const first = await description(context);
    const told = (word: string): string =>
      first.lines.flat().find(({ text }) => text.includes(word))?.text ?? "";
    const body = first.body.replace(told("a pear"), "").replace(/ {2,}/gu, " ");
    await saveDraft(context, { ...KEY, revision: 0, body });
    const on = day("2026-03-10");
    await publishEpisode(context, { monday: MONDAY, revision: 1, on, url: "" });
    await context.db.reaction.updateMany({ data: { quote: "The crust was the tunnel" } });
    await context.db.lunchItem.update({ where: { id: "i2" }, data: { fate: "scrapped" } });
    const noteOf = async () => (await loadPack(context, MONDAY))?.correction ?? "";
    const note = await noteOf();
    const descriptions = note.split("\n").filter((line) => /description/u.test(line));
    expect(descriptions.join()).toContain("the tunnel");
    expect(descriptions.join()).not.toContain("a pear");
    const stale = await description(context);
    const choices = stale.stale?.conflicts.map(() => "mine" as const) ?? [];
    await updateDraft(context, { ...KEY, revision: stale.revision, anew: false, choices });
    expect((await description(context)).stale).toBeNull();
    expect(await noteOf()).toBe(note);
  });

  it("a template’s next version is used for what is written next, and an error is refused by its line", async () => {
    const context = await packedWeek();
    const wrong = await saveTemplate(context, {
      ...{ kind: "description", version: 0, body: "{{ opener }}\n{{ oops }}" },
    });
    expect(wrong).toMatchObject({ ok: false, problem: { kind: "error", problem: { line: 2 } } });
    await keepDraft(context, { ...KEY, revision: 0 });
    await saveTemplate(context, { kind: "description", version: 0, body: "Short: {{ opener }}" });
    const kept = await description(context);
    expect(kept.newerTemplate?.conflicts).toEqual([]);
    expect(kept.newerTemplate?.fresh[0]).toMatch(/^Short: /u);
    expect(kept.stale).toBeNull();
    await updateDraft(context, { ...KEY, revision: 1, anew: true, choices: [] });
    expect((await description(context)).body).toMatch(/^Short: /u);
  });

  it("a newer template asks which way a passage goes that the user changed too", async () => {
    const context = await packedWeek();
    const body = (text: string): string => `Hello from us.\n{{ opener }}\n${text}`;
    const save = (version: number, text: string) =>
      saveTemplate(context, { kind: "description", version, body: body(text) });
    await save(0, "Goodbye from us.");
    const first = await description(context);
    await saveDraft(context, {
      ...{ ...KEY, revision: 0, body: first.body.replace("Goodbye from us.", "See you, gulls.") },
    });
    expect((await description(context)).newerTemplate).toBeNull();
    await save(1, "Farewell from us.");
    const { newerTemplate } = await description(context);
    const [conflict] = newerTemplate?.conflicts ?? [];
    expect(newerTemplate?.conflicts).toHaveLength(1);
    expect(conflict).toEqual({ mine: "See you, gulls.", theirs: "Farewell from us." });
    const anew = { ...KEY, revision: 1, anew: true };
    const undecided = await updateDraft(context, { ...anew, choices: [] });
    expect(undecided).toEqual({ ok: false, problem: { kind: "undecided" } });
    expect((await updateDraft(context, { ...anew, choices: ["both"] })).ok).toBe(true);
    const after = await description(context);
    expect(after.body).toMatch(/^Hello from us\.\n.+\nSee you, gulls\. Farewell from us\.$/u);
    expect(after.newerTemplate).toBeNull();
  });

  it("chapters follow the marked times, and a child cannot be on screen longer than the episode", async () => {
    const context = await packedWeek();
    const typed = {
      ...{ monday: MONDAY, revision: 1, runtime: "5:00" },
      chapters: [
        { time: "0:00", title: "Opener" },
        { time: "1:00", title: "Monday" },
        { time: "4:30", title: "Closer" },
      ],
      screen: [{ childId: "c1", time: "6:00" }],
    };
    expect(await markTimes(context, MarkTimesInput.parse(typed))).toEqual({
      ok: false,
      problem: { kind: "screen-too-long" },
    });
    const times = MarkTimesInput.parse({ ...typed, screen: [{ childId: "c1", time: "1:30" }] });
    expect((await markTimes(context, times)).ok).toBe(true);
    const view = await loadFiles(context, MONDAY);
    expect(view?.problems).toEqual([]);
    expect(view?.files[0]?.text).toBe("0:00 Opener\n1:00 Monday\n4:30 Closer");
    expect(view?.shares[0]?.percent).toBe(30);
  });

  it("chapters and on-screen shares hold the description back in the pack until mended or kept", async () => {
    const context = await packedWeek();
    await writeSettings(context.db, { lawNote: "Count a child past 30 % of an episode." });
    const typed = {
      ...{ monday: MONDAY, revision: 1, runtime: "5:00" },
      chapters: [
        { time: "0:00", title: "Opener" },
        { time: "1:00", title: "Monday" },
      ],
      screen: [{ childId: "c1", time: "2:00" }],
    };
    await markTimes(context, MarkTimesInput.parse(typed));
    const open = async () => {
      const pieces = (await loadPack(context, MONDAY))?.pieces ?? [];
      return pieces.flatMap((piece) => (piece.open > 0 ? [[piece.kind, piece.open]] : []));
    };
    expect(await open()).toEqual([["description", 2]]);
    const held = (await description(context)).checks.flatMap(({ kind, findings }) =>
      findings.map(({ key }) => ({ kind, key })),
    );
    expect(held.map(({ kind }) => kind)).toEqual(["chapters", "screen"]);
    const chapters = [...typed.chapters, { time: "4:30", title: "Closer" }];
    await markTimes(context, MarkTimesInput.parse({ ...typed, revision: 2, chapters }));
    expect(await open()).toEqual([["description", 1]]);
    const key = held[1]?.key ?? "";
    await settleFinding(context, { ...KEY, revision: 0, key, fix: null });
    expect(await open()).toEqual([]);
  });

  it("a house recipe is a file with its ingredients, and no file leaves with a private name in it", async () => {
    const context = await packedWeek();
    const set = (ingredients: string) =>
      context.db.food.update({ where: { id: "rye-bread" }, data: { ingredients } });
    const files = async () => (await loadFiles(context, MONDAY))?.files ?? [];
    expect((await files()).map(({ open }) => open)).toEqual((await files()).map(() => []));
    await set("Makes 2 loaves\n500 g rye flour");
    const recipe = (await files()).find(({ name }) => name === "Recipe: rye bread");
    expect(JSON.parse(recipe?.text ?? "")).toMatchObject({
      ...{ recipeYield: "2 loaves", recipeIngredient: ["500 g rye flour"] },
    });
    await set("Ines’s own rye flour");
    const held = (await files()).filter(({ open }) => open.length > 0);
    expect(held.map(({ name, mendHref }) => [name, mendHref])).toEqual([
      ["Recipe: rye bread", "/larder/rye-bread"],
    ]);
    await saveDraft(context, { ...KEY, revision: 0, body: "Ines packed." });
    const names = (await files()).filter(({ open }) => open.length > 0).map(({ name }) => name);
    expect(names).toContain("Video with its parts");
    expect(names.filter((name) => name.startsWith("Description as"))).toHaveLength(3);
  });

  it("a post of one food counts right", async () => {
    const context = await packedWeek();
    const view = await loadBoard(context, {
      ...{ foodId: "rye-bread", themeId: undefined, from: undefined, to: undefined, chosen: [] },
    });
    expect(view.text).toBe(
      "How we packed rye bread:\n\n1. 2 March, Night Train: beside a pear. Biscuit finished it.",
    );
    expect(view.open).toBe(0);
  });
});
