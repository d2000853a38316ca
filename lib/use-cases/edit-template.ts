import { ok, refuse, type Result } from "#lib/base/index.ts";
import type { Day } from "#lib/calendar/index.ts";
import { inTransaction, readTemplates, writeTemplate } from "#lib/db/index.ts";
import {
  compose,
  DEFAULT_TEMPLATES,
  DRAFT_NAMES,
  type DraftKind,
  type TemplateProblem,
} from "#lib/drafts/index.ts";
import type { Context } from "./context.ts";
import { keptCopyDeskGround } from "./copy-desk-ground.ts";
import { latestPacked } from "./latest-packed.ts";
import type { SaveTemplateInput, TemplateInput } from "./edit-template.input.ts";

export type TemplateView = {
  readonly kind: DraftKind;
  readonly name: string;
  /** 0: ours. */
  readonly version: number;
  readonly body: string;
  readonly preview: Preview;
  /** Earlier versions, latest first; the last one is ours. */
  readonly versions: readonly { readonly version: number; readonly body: string }[];
};

/** What a template writes from the latest packed week, or what is wrong with it. */
export type Preview =
  | { readonly kind: "text"; readonly text: string; readonly week: Day }
  | { readonly kind: "problem"; readonly problem: TemplateProblem }
  | { readonly kind: "no-week" };

/** A template with its versions and what it writes. */
export async function loadTemplate(context: Context, kind: DraftKind): Promise<TemplateView> {
  const templates = (await readTemplates(context.db)).filter((one) => one.kind === kind);
  const ours = { version: 0, body: DEFAULT_TEMPLATES[kind] };
  const versions = [...templates.map(({ version, body }) => ({ version, body })), ours].sort(
    (one, other) => other.version - one.version,
  );
  const [now = ours] = versions;
  const preview = await previewTemplate(context, { body: now.body });
  return { kind, name: DRAFT_NAMES[kind], ...now, preview, versions };
}

/** What a template would write now. Nothing is kept. */
export async function previewTemplate(
  { db, today }: Context,
  { body }: Pick<TemplateInput, "body">,
): Promise<Preview> {
  const week = await latestPacked(db, today);
  const ground = week && (await keptCopyDeskGround(db, week, today));
  if (!ground) return { kind: "no-week" };
  const day = ground.records.lunches.find((lunch) => lunch.isPacked) ?? ground.records.lunches[0];
  const composed = compose(ground.told(0), body, day?.id ?? null);
  return composed.ok
    ? { kind: "text", text: composed.value.text, week }
    : { kind: "problem", problem: composed.problem };
}

export type SaveTemplateProblem =
  | { readonly kind: "changed-meanwhile" }
  | { readonly kind: "error"; readonly problem: TemplateProblem };

/** Keeps a template as its next version. Refuses one with an error, or when another tab kept one meanwhile. */
export async function saveTemplate(
  context: Context,
  { kind, body, version }: SaveTemplateInput,
): Promise<Result<undefined, SaveTemplateProblem>> {
  const preview = await previewTemplate(context, { body });
  if (preview.kind === "problem") return refuse({ kind: "error", problem: preview.problem });
  return inTransaction(context.db, async (tx) => {
    const templates = (await readTemplates(tx)).filter((one) => one.kind === kind);
    if ((templates.at(-1)?.version ?? 0) !== version) return refuse({ kind: "changed-meanwhile" });
    if (templates.at(-1)?.body !== body) await writeTemplate(tx, kind, body);
    return ok(undefined);
  });
}

/** Words for a refusal. */
export function describeTemplateProblem(problem: SaveTemplateProblem): string {
  switch (problem.kind) {
    case "changed-meanwhile":
      return "Another tab kept a version meanwhile. What you typed is still here: copy it, then open the page anew.";
    case "error":
      return `Line ${problem.problem.line}: ${problem.problem.message}`;
  }
}
