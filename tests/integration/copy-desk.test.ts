import { describe, expect, it } from "vitest";
import { writeSettings } from "#lib/db/index.ts";
import { loadBoard } from "#lib/use-cases/load-board.ts";
import { loadFiles } from "#lib/use-cases/load-files.ts";
import { loadPack } from "#lib/use-cases/load-copy-desk.ts";
import { saveTemplate } from "#lib/use-cases/edit-template.ts";
import { markTimes } from "#lib/use-cases/mark-times.ts";
import { MarkTimesInput } from "#lib/use-cases/mark-times.input.ts";
import { keepDraft, saveDraft, settleFinding, updateDraft } from "#lib/use-cases/save-draft.ts";
import { description, KEY, MONDAY, packedWeek } from "#tests/support/packed-week.ts";

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

  it("an opener that echoes one of last month’s gives way to another; an older one does not matter", async () => {
    const context = await packedWeek();
    const openerOf = async (): Promise<string> => {
      const lines = (await description(context)).lines.flat();
      return lines.find(({ facts }) => facts.includes("theme"))?.text ?? "";
    };
    const usual = await openerOf();
    expect(usual).toContain("Night Train");
    const keptIn = (weekOf: string) => {
      const text = usual.replace("Night Train", "Apple Press");
      const facts = [{ id: "theme", label: "", rows: [["Title", "Apple Press"]] }];
      const generatedJson = JSON.stringify({ lines: [[{ text, facts: ["theme"] }]], facts });
      return context.db.episode.create({
        data: {
          ...{ number: 1, weekOf, workingTitle: "Apple Press" },
          drafts: { create: { kind: "description", generatedJson, body: text } },
        },
      });
    };
    await keptIn("2026-01-12");
    expect(await openerOf()).toBe(usual);
    await keptIn("2026-02-16");
    expect(await openerOf()).not.toBe(usual);
    expect(await openerOf()).toContain("Night Train");
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
