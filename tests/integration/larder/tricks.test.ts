import { expect, test } from "vitest";
import { readTricks } from "#lib/db/index.ts";
import { loadTricks } from "#lib/use-cases/larder/load-tricks.ts";
import { retire } from "#lib/use-cases/larder/retire.ts";
import { saveTrick } from "#lib/use-cases/larder/save-trick.ts";
import { TrickInput, type TrickFields } from "#lib/use-cases/larder/trick.input.ts";
import { loadCatalogue } from "#lib/use-cases/load-catalogue.ts";
import { referenceCatalogue } from "#seed/index.ts";
import { testContext } from "#tests/support/test-context.ts";

const NEW: TrickFields = {
  ...{ id: "", editedAt: "", name: "Anchor cutter", kind: "cutter", motifs: "sea, Night sky" },
  ...{ colours: [], minutes: "1,5", needsSliceable: true },
};

test("a trick of one's own is added once, and an edited one outlives a later catalogue", async () => {
  const context = testContext();
  const added = await saveTrick(context, TrickInput.parse(NEW));
  expect(added).toEqual({ ok: true, value: "anchor-cutter" });
  const again = await saveTrick(context, TrickInput.parse({ ...NEW, name: "ANCHOR cutter" }));
  expect(again).toEqual({ ok: false, problem: { kind: "name-taken" } });

  const star = (await loadTricks(context)).tricks.find(({ fields }) => fields.id === "star-cutter");
  const typed = { ...NEW, ...star?.fields, name: "star tin" };
  await saveTrick(context, TrickInput.parse(typed));
  const catalogue = referenceCatalogue();
  await loadCatalogue(context.db, { ...catalogue, version: catalogue.version + 1 });
  const tricks = new Map(
    (await readTricks(context.db)).map((trick) => [trick.id as string, trick]),
  );
  expect(tricks.get("star-cutter")?.name).toBe("star tin");
  expect(tricks.get("anchor-cutter")).toMatchObject({
    minutes: 1.5,
    motifs: ["sea", "night-sky"],
    needsSliceable: true,
  });
  const second = await saveTrick(context, TrickInput.parse({ ...typed, name: "other tab" }));
  expect(second).toEqual({ ok: false, problem: { kind: "changed-elsewhere" } });
});

test("a retired trick is offered no more and stands last in the list", async () => {
  const context = testContext();
  await retire(context, { kind: "trick", id: "star-cutter", isRetired: true });
  expect((await readTricks(context.db)).map(({ id }) => id)).not.toContain("star-cutter");
  expect((await loadTricks(context)).tricks.at(-1)).toMatchObject({
    fields: { id: "star-cutter" },
    isRetired: true,
  });
});

test.each([
  ["no name", { name: " " }, "name"],
  ["a kind that is none", { kind: "laser" }, "kind"],
  ["no minutes", { minutes: "" }, "minutes"],
  ["minutes below zero", { minutes: "-1" }, "minutes"],
])("%s is told beside its field", (_, wrong, field) => {
  const parsed = TrickInput.safeParse({ ...NEW, ...wrong });
  expect(parsed.error?.issues.map(({ path }) => path.join("."))).toEqual([field]);
});
