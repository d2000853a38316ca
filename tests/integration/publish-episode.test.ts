import { describe, expect, it } from "vitest";
import { day } from "#lib/calendar/index.ts";
import { loadPack } from "#lib/use-cases/load-copy-desk.ts";
import { publishEpisode } from "#lib/use-cases/publish-episode.ts";
import { saveDraft, updateDraft } from "#lib/use-cases/save-draft.ts";
import { description, KEY, MONDAY, packedWeek } from "#tests/support/packed-week.ts";

describe("publishing an episode", () => {
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
});
