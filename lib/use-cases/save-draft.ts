import { ok, refuse, type Result } from "#lib/base/index.ts";
import { inTransaction, writeDraft, type Db } from "#lib/db/index.ts";
import { applyFix, mergeDraft } from "#lib/drafts/index.ts";
import type { Context } from "./context.ts";
import { openDesk, type Desk } from "./desk.ts";
import { writtenOf } from "./piece-of.ts";
import type {
  PieceInput,
  SaveDraftInput,
  SettleFindingInput,
  UpdateDraftInput,
} from "./save-draft.input.ts";

export type DraftProblem = {
  readonly kind: "gone" | "changed-meanwhile" | "mended" | "template" | "undecided";
};

type Saved = Promise<Result<undefined, DraftProblem>>;

/** Keeps the user's own words for a piece. Refuses when another tab saved it meanwhile. */
export function saveDraft({ db, today }: Context, input: SaveDraftInput): Saved {
  return inTransaction(db, async (tx) => {
    const desk = await openDesk(tx, input, today);
    return desk ? keep(tx, desk, input, { body: input.body }) : refuse({ kind: "gone" });
  });
}

/** Keeps a piece as it stands, so that it is known what was copied. Keeping it twice changes nothing. */
export function keepDraft({ db, today }: Context, input: PieceInput): Saved {
  return inTransaction(db, async (tx) => {
    const desk = await openDesk(tx, input, today);
    if (!desk) return refuse({ kind: "gone" });
    return desk.stored ? ok(undefined) : keep(tx, desk, input, {});
  });
}

/**
 * Goes back to the draft as the records tell it now; what was written by hand is dropped. A post of the
 * board is dropped whole: its lunches can be chosen again.
 */
export function dropDraft({ db, today }: Context, input: PieceInput): Saved {
  return inTransaction(db, async (tx) => {
    const stored = (await openDesk(tx, input, today))?.stored;
    if (!stored) return refuse({ kind: "gone" });
    if (stored.revision !== input.revision) return refuse({ kind: "changed-meanwhile" });
    await tx.draft.delete({ where: { id: stored.id } });
    return ok(undefined);
  });
}

/** Mends one finding of a guard, or keeps it as it is. Refuses when the words are no longer there. */
export function settleFinding({ db, today }: Context, input: SettleFindingInput): Saved {
  return inTransaction(db, async (tx) => {
    const desk = await openDesk(tx, input, today);
    if (!desk) return refuse({ kind: "gone" });
    const piece = desk.view();
    const finding = piece.checks
      .flatMap((check) => check.findings)
      .find(({ key }) => key === input.key);
    if (!finding) return refuse({ kind: "mended" });
    if (input.fix === null) {
      return keep(tx, desk, input, { kept: [...piece.kept, finding.key] });
    }
    const fix = finding.fixes[input.fix];
    if (!fix) return refuse({ kind: "mended" });
    return keep(tx, desk, input, { body: applyFix(piece.lines, fix) });
  });
}

/**
 * Brings a stale draft up to date, or writes it anew with the latest template: the user's own changes
 * stay, and where both changed a passage the choices say which goes. Refuses when not every such
 * passage has a choice.
 */
export function updateDraft({ db, today }: Context, input: UpdateDraftInput): Saved {
  return inTransaction(db, async (tx) => {
    const desk = await openDesk(tx, input, today);
    const stored = desk?.stored;
    if (!stored) return refuse({ kind: "gone" });
    if (stored.revision !== input.revision) return refuse({ kind: "changed-meanwhile" });
    const templateVersion = input.anew ? desk.latest : stored.templateVersion;
    const composed = desk.compose({ templateVersion, written: stored.written });
    if (!composed.ok) return refuse({ kind: "template" });
    const { lines, text } = composed.value;
    const merge = mergeDraft(stored.body, stored.written.lines, lines);
    if (merge.conflicts.length !== input.choices.length) return refuse({ kind: "undecided" });
    const body = merge.text(input.choices);
    await writeDraft(tx, stored.id, {
      ...{ ...desk.columns, body, templateVersion, edited: body !== text },
      written: writtenOf(composed.value, stored.written),
    });
    return ok(undefined);
  });
}

async function keep(
  tx: Db,
  { stored, columns, compose, latest, salt }: Desk,
  { revision }: PieceInput,
  change: { readonly body?: string; readonly kept?: readonly string[] },
): Saved {
  if ((stored?.revision ?? 0) !== revision) return refuse({ kind: "changed-meanwhile" });
  const composed = compose(stored);
  if (!composed.ok && !stored) return refuse({ kind: "template" });
  const fresh = composed.ok ? writtenOf(composed.value, { salt }) : undefined;
  const written = stored?.written ?? fresh;
  if (!written) return refuse({ kind: "template" });
  const text = composed.ok ? composed.value.text : "";
  await writeDraft(tx, stored?.id, {
    ...{ ...columns, body: change.body ?? stored?.body ?? text },
    templateVersion: stored?.templateVersion ?? latest,
    written: { ...written, kept: [...(change.kept ?? written.kept)] },
    edited: change.body === undefined ? (stored?.edited ?? false) : change.body !== text,
  });
  return ok(undefined);
}

/** Words for a refusal. */
export function describeDraftProblem({ kind }: DraftProblem): string {
  switch (kind) {
    case "gone":
      return "This episode or draft was removed meanwhile.";
    case "changed-meanwhile":
      return "This piece was changed in another tab meanwhile. What you typed is still here: open the page anew to compare.";
    case "undecided":
      return "Both you and the records changed a passage. Say for each which way it goes.";
    case "mended":
      return "Those words are no longer in the text.";
    case "template":
      return "The template of this piece has an error. Mend it first.";
  }
}
