import { ok, refuse, type Result } from "#lib/base/index.ts";
import { Allergen, FamilyId, FoodId } from "#lib/catalog/index.ts";
import {
  inTransaction,
  readChildren,
  readSettings,
  writeChild,
  writeSettings,
  type AvoidanceRecord,
  type ChildRecord,
  type Db,
} from "#lib/db/index.ts";
import { givesAway, type Avoidance } from "#lib/safety/index.ts";
import type { z } from "zod";
import type { Context } from "../context.ts";
import type { ChildInput, RetireInput } from "./child-sheet.input.ts";
import type { SheetProblem } from "./sheet-problem.ts";
import { stampOf } from "./stamp.ts";

type TypedChild = z.input<typeof ChildInput>;

/** A child's sheet as its form opens, an empty one without an id, or undefined when there is none. */
export async function loadChildSheet(
  { db }: Context,
  id: string | undefined,
): Promise<TypedChild | undefined> {
  if (id === undefined) return NEW_CHILD;
  const child = (await readChildren(db)).find((one) => one.id === id);
  return child && sheetOf(child);
}

/**
 * Saves a child with everything it avoids, all or nothing; its private name joins the words that never
 * leave. Refuses when another tab saved first, and names on screen that give a private one away.
 */
export async function saveChild(
  { db, today }: Context,
  input: ChildInput,
): Promise<Result<{ readonly id: string }, SheetProblem>> {
  return inTransaction(db, async (tx) => {
    const children = await readChildren(tx);
    const standing = children.find((one) => one.id === input.id);
    if (input.id !== "" && !standing) return refuse({ kind: "gone" });
    if (standing && sheetOf(standing).stamp !== input.stamp) {
      return refuse({ kind: "changed-elsewhere" });
    }
    const others = children.filter((one) => one.id !== input.id);
    const problem =
      nameProblem(input, others) ??
      (input.birthMonth > today.slice(0, 7)
        ? ({ kind: "born-later", field: "birthMonth" } as const)
        : await missingProblem(tx, input.avoidances));
    if (problem) return refuse(problem);
    const id = await writeChild(tx, standing?.id, {
      privateName: input.privateName,
      onScreenName: input.onScreenName,
      birthMonth: input.birthMonth || null,
      portionFactor: input.portionFactor,
      facePoints: FACE_POINTS[input.facePoints],
      avoidances: input.avoidances.map((one) => ({
        avoidance: avoidanceOf(one),
        note: one.note,
      })),
    });
    const { privateWords } = await readSettings(tx);
    if (!privateWords.includes(input.privateName)) {
      await writeSettings(tx, { privateWords: [...privateWords, input.privateName] });
    }
    return ok({ id });
  });
}

/** Retires a child from the weeks to come, or brings it back; what was recorded stays. */
export async function retireChild(
  { db, now }: Context,
  { id, isRetired }: RetireInput,
): Promise<Result<undefined, SheetProblem>> {
  const { count } = await db.child.updateMany({
    where: { id },
    data: { retiredAt: isRetired ? now : null },
  });
  return count === 0 ? refuse({ kind: "gone" }) : ok(undefined);
}

const FACE_POINTS = { "": null, "3": 3, "5": 5, "7": 7 } as const;

const NEW_CHILD: TypedChild = {
  ...{ id: "", stamp: "", privateName: "", onScreenName: "", birthMonth: "" },
  ...{ portionFactor: 1, facePoints: "", avoidances: [] },
};

function sheetOf(child: ChildRecord): TypedChild {
  const typed = {
    id: child.id,
    privateName: child.privateName,
    onScreenName: child.onScreenName,
    birthMonth: child.birthMonth ?? "",
    portionFactor: child.portionFactor,
    facePoints: child.facePoints === null ? ("" as const) : (`${child.facePoints}` as const),
    avoidances: child.avoidances.map(typedAvoidance),
  };
  return { ...typed, stamp: stampOf(typed) };
}

function typedAvoidance({ avoidance, what, note }: AvoidanceRecord) {
  const { severity } = avoidance;
  const said = { severity, note, label: what };
  if ("allergen" in avoidance)
    return { ...said, kind: "allergen" as const, what: avoidance.allergen };
  return "food" in avoidance
    ? { ...said, kind: "food" as const, what: avoidance.food }
    : { ...said, kind: "family" as const, what: avoidance.family };
}

function avoidanceOf({ kind, what, severity }: ChildInput["avoidances"][number]): Avoidance {
  switch (kind) {
    case "allergen":
      return { severity, allergen: Allergen.parse(what) };
    case "food":
      return { severity, food: FoodId.parse(what) };
    case "family":
      return { severity, family: FamilyId.parse(what) };
  }
}

/** Names are told apart across all children, retired ones too: old episodes still show them. */
function nameProblem(input: ChildInput, others: readonly ChildRecord[]): SheetProblem | undefined {
  if (others.some((other) => givesAway(input.onScreenName, other.privateName))) {
    return { kind: "name-given-away", field: "onScreenName" };
  }
  if (others.some((other) => givesAway(other.onScreenName, input.privateName))) {
    return { kind: "other-name-given-away", field: "privateName" };
  }
  const shown = input.onScreenName.toLowerCase();
  return others.some((other) => other.onScreenName.toLowerCase() === shown)
    ? { kind: "on-screen-name-taken", field: "onScreenName" }
    : undefined;
}

async function missingProblem(
  tx: Db,
  avoidances: ChildInput["avoidances"],
): Promise<SheetProblem | undefined> {
  const named = (kind: "food" | "family"): string[] =>
    avoidances.flatMap((one) => (one.kind === kind ? [one.what] : []));
  const [foods, families] = [
    await tx.food.findMany({ where: { id: { in: named("food") } }, select: { id: true } }),
    await tx.family.findMany({ where: { id: { in: named("family") } }, select: { id: true } }),
  ];
  const known = new Set([
    ...foods.map(({ id }) => `food ${id}`),
    ...families.map(({ id }) => `family ${id}`),
  ]);
  const missing = avoidances.findIndex(
    ({ kind, what }) => kind !== "allergen" && !known.has(`${kind} ${what}`),
  );
  if (missing < 0) return undefined;
  const field = `avoidances.${missing}.what`;
  return { kind: avoidances[missing]?.kind === "food" ? "food-gone" : "family-gone", field };
}
