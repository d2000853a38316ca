import { Liquid, type Template } from "liquidjs";
import { refuse, ok, type Result } from "#lib/base/index.ts";
import { listOf } from "../words/index.ts";

/** Longest template, in characters. */
export const TEMPLATE_MOST = 20_000;
/** Longest text a template may write, in characters. */
const OUTPUT_MOST = 60_000;

/** What is wrong with a template, and in which of its lines (1 is the first). */
export type TemplateProblem = { readonly line: number; readonly message: string };

const TAGS = new Set(
  "assign capture case comment for if unless break continue cycle echo raw # inline_comment".split(
    " ",
  ),
);
const FILTERS = new Set(
  "append at_least at_most concat default divided_by first floor join last limit minus modulo plus prepend replace reverse round size sort times uniq upcase downcase capitalize".split(
    " ",
  ),
);

/**
 * The template language: Liquid, an open syntax, without files, without code, and with limits on what
 * a template may read, hold, spend and write.
 */
function makeEngine(): Liquid {
  const engine = new Liquid({
    strictFilters: true,
    strictVariables: true,
    lenientIf: true,
    ownPropertyOnly: true,
    templates: {},
    parseLimit: TEMPLATE_MOST,
    memoryLimit: 2_000_000,
    renderLimit: 2_000,
  });
  for (const tag of Object.keys(engine.tags)) if (!TAGS.has(tag)) delete engine.tags[tag];
  for (const filter of Object.keys(engine.filters))
    if (!FILTERS.has(filter)) delete engine.filters[filter];
  engine.registerFilter("list", (words: unknown) =>
    Array.isArray(words) ? listOf(words.filter((word) => typeof word === "string")) : words,
  );
  engine.registerFilter("capitalize", (text: unknown) =>
    typeof text === "string" ? text.replace(/[^\uE000-\uF8FF]/u, (one) => one.toUpperCase()) : text,
  );
  return engine;
}

const engine = makeEngine();
const parsed = new Map<string, Template[]>();
/** So many templates are kept parsed. */
const PARSED_MOST = 64;

/** A template's text for a scope, marks and all; or what is wrong with it, by line. */
export function renderTemplate(body: string, scope: object): Result<string, TemplateProblem> {
  if (body.length > TEMPLATE_MOST) {
    return refuse({ line: 1, message: `A template holds ${TEMPLATE_MOST} characters at most.` });
  }
  try {
    const text: unknown = engine.renderSync(parse(body), scope);
    const written = String(text);
    if (written.length > OUTPUT_MOST) {
      return refuse({ line: 1, message: `It writes more than ${OUTPUT_MOST} characters.` });
    }
    return ok(written);
  } catch (error) {
    return refuse(problemOf(error));
  }
}

function parse(body: string): Template[] {
  const kept = parsed.get(body);
  if (kept) return kept;
  const template = engine.parse(body);
  if (parsed.size >= PARSED_MOST) parsed.clear();
  parsed.set(body, template);
  return template;
}

function problemOf(error: unknown): TemplateProblem {
  const message = error instanceof Error ? error.message : String(error);
  const line = /line:(\d+)/u.exec(message)?.[1];
  return {
    line: line === undefined ? 1 : Number(line),
    message: inPlainWords(message.replace(/,?\s*(?:file:\S+, )?line:\d+, col:\d+$/u, "")),
  };
}

function inPlainWords(message: string): string {
  const missing = /^undefined variable: (.+)$/u.exec(message)?.[1];
  if (missing !== undefined) return `There is nothing called “${missing}” here.`;
  const filter = /^undefined filter: (.+)$/u.exec(message)?.[1];
  if (filter !== undefined) return `There is no filter called “${filter}”.`;
  const tag = /^tag "(.+?)" not found$/u.exec(message)?.[1];
  if (tag !== undefined) return `There is no tag called “${tag}”.`;
  const open = /^tag (.+) not closed$/u.exec(message)?.[1];
  if (open !== undefined) return `${open} is never closed.`;
  if (/limit exceeded/u.test(message)) return "It takes too much: too many turns or too much text.";
  return message.endsWith(".") ? message : `${message}.`;
}
