import { groupBy, hash32 } from "#lib/base/index.ts";
import { longWeekday, mediumDay, weekdayOf, type Day } from "#lib/calendar/index.ts";
import type { Fact, FactKind } from "../facts/fact.ts";
import { bankFor } from "../phrases/phrase.ts";
import { wayAt } from "../phrases/bank.ts";
import type { Voice } from "../records.ts";
import { marked } from "../text/marks.ts";
import { isolated, listOf, quoted, tidy } from "../words/index.ts";

/** What the words of an episode are chosen by, beside its facts. */
export type Told = {
  readonly facts: readonly Fact[];
  /** Their ids, in the same order. */
  readonly factIds: readonly string[];
  readonly voice: Voice;
  readonly seriesName: string;
  readonly number: number;
  readonly title: string;
  /**
   * Whose turn it is among the ways to say something: the week’s, so that an episode numbered anew
   * still says what it said.
   */
  readonly turn: number;
  /** Days of lunches in the week, in order. */
  readonly days: readonly { readonly lunchId: string; readonly date: Day }[];
  /** Raised when the opener whose turn it is sounds like one of last month’s. */
  readonly salt: number;
};

const scopes = new WeakMap<Told, ReturnType<typeof weekOf>>();

/** What a template can name. Sentences carry the marks of the facts they tell. */
export function scopeOf(told: Told, lunchId?: string): Record<string, unknown> {
  const week = scopes.get(told) ?? weekOf(told);
  scopes.set(told, week);
  const { say, ...scope } = week;
  const day =
    lunchId === undefined
      ? (scope.days[0] ?? null)
      : (scope.days.find((one) => one.id === lunchId) ?? null);
  return { ...scope, day, disclosures: say.all("disclosure", lunchId) };
}

/** What holds for every piece of an episode. */
function weekOf(told: Told) {
  const say = teller(told);
  const days = told.days
    .map((day) => dayScope(told, say, day))
    .filter((day) => day.packed !== null);
  const packed = days.filter((one) => one.is_packed);
  const { voice } = told;
  return {
    say,
    series: { name: isolated(told.seriesName) },
    episode: { number: told.number, title: say.part("theme", isolated(tidy(told.title))) },
    sign_on: tidy(voice.signOn) || null,
    sign_off: tidy(voice.signOff) || null,
    house_phrase: turned(voice.housePhrases.map(tidy).filter(Boolean), told.turn),
    emoji: voice.emoji,
    opener: say.opener(),
    days,
    /** What can be told in public: the days that are over, or the plan while none is. */
    told_days: packed.length > 0 ? packed : days,
    week: weekScope(say),
    found: foundScope(told, say),
    allergens: say.one("allergens"),
    promises: {
      kept: say.where("promise", (fact) => fact.detail.kind === "promise" && fact.detail.keptNow),
      open: say.where("promise", (fact) => fact.detail.kind === "promise" && !fact.detail.keptNow),
    },
    next: say.one("next"),
  };
}

type Teller = ReturnType<typeof teller>;

/** Says facts in the words whose turn it is. */
function teller({ facts, voice, turn: week, salt }: Told) {
  const numbers = new Map(facts.map((fact, index) => [fact, index]));
  const sentence = (fact: Fact, turn: number): string =>
    marked(wayAt(bankFor(fact.detail), voice.tone, turn), numbers.get(fact) ?? 0);
  const where = (kind: FactKind, holds: (fact: Fact) => boolean): string[] =>
    facts
      .filter((fact) => fact.kind === kind && holds(fact))
      .map((fact, index) => sentence(fact, week + index));
  return {
    where,
    sentence,
    all: (kind: FactKind, lunchId?: string) =>
      where(kind, (fact) => lunchId === undefined || concerns(fact, lunchId, facts)),
    one: (kind: FactKind): string | null => where(kind, () => true)[0] ?? null,
    part: (kind: FactKind, text: string): string => {
      const fact = facts.find((one) => one.kind === kind);
      return fact ? marked(text, numbers.get(fact) ?? 0) : text;
    },
    opener: (): string | null => {
      const theme = facts.find((fact) => fact.kind === "theme");
      return theme ? sentence(theme, week + salt) : null;
    },
    mark: (fact: Fact, text: string): string => marked(text, numbers.get(fact) ?? 0),
    facts,
    week,
  };
}

/** Whether a fact has to do with one lunch: it is of its day, or rests on one of its items. */
function concerns(fact: Fact, lunchId: string, facts: readonly Fact[]): boolean {
  const packed = facts.find((one) => one.id === `packed:${lunchId}`);
  const items = new Set(packed?.refs.map(({ table, id }) => `${table}:${id}`));
  return fact.refs.some(({ table, id }) => table === "LunchItem" && items.has(`${table}:${id}`));
}

function dayScope(
  { facts, turn: week }: Told,
  say: Teller,
  { lunchId, date }: { readonly lunchId: string; readonly date: Day },
) {
  const turn = week + weekdayOf(date);
  const own = facts.filter((fact) => fact.on === date);
  const tell = (kind: FactKind): string[] =>
    own.filter((fact) => fact.kind === kind).map((fact, at) => say.sentence(fact, turn + at));
  const packed = own.find((fact) => fact.kind === "packed");
  const detail = packed?.detail.kind === "packed" ? packed.detail : undefined;
  const quotes = tell("quote");
  const [chosen] = drawn(
    own.filter((fact) => fact.kind === "quote"),
    turn,
  );
  return {
    id: lunchId,
    name: longWeekday(date),
    date: mediumDay(date),
    angle: packed && detail?.angle ? say.mark(packed, isolated(detail.angle)) : null,
    is_packed: detail?.tense === "did",
    packed: tell("packed")[0] ?? null,
    foods: packed && detail ? say.mark(packed, listOf(detail.foods)) : null,
    food_names: packed && detail ? detail.foods.map((food) => say.mark(packed, food)) : [],
    swaps: tell("swap"),
    minutes: tell("minutes")[0] ?? null,
    verdicts: tell("verdict"),
    quotes,
    /** One quote of the day, in words that change from day to day. */
    quote: chosen ? say.sentence(chosen, turn) : null,
    firsts: tell("first"),
    returns: tell("return"),
    milestones: tell("milestone"),
  };
}

function weekScope(say: Teller) {
  const quotes = acrossDays(say);
  return {
    tally: say.one("tally"),
    finished: say.one("finished"),
    untouched: say.one("untouched"),
    swaps: say.all("swap"),
    minutes: say.all("minutes"),
    firsts: say.where("first", isOver),
    returns: say.where("return", isOver),
    milestones: say.all("milestone"),
    quotes,
    quote: turned(quotes, 0),
    quote_words: quoteWords(say),
  };
}

/** A child’s words alone, for a title. */
function quoteWords(say: Teller): string | null {
  const quotes = say.facts.filter((fact) => fact.kind === "quote");
  const [fact] = drawn(quotes, say.week);
  return fact?.detail.kind === "quote"
    ? say.mark(fact, quoted(fact.detail.words).replace(/”\.$/u, "”"))
    : null;
}

/** Of a food that comes or comes back: it has been packed. */
function isOver({ detail }: Fact): boolean {
  return "tense" in detail && detail.tense === "did";
}

/** Shops in the order they first appear, each with its foods. */
function foundScope({ facts }: Told, say: Teller) {
  const shops = new Map<string, string[]>();
  for (const fact of facts) {
    if (fact.detail.kind !== "found") continue;
    const { shop, food } = fact.detail;
    shops.set(shop, [...(shops.get(shop) ?? []), say.mark(fact, food.bare)]);
  }
  return [...shops].map(([shop, foods]) => ({
    shop: isolated(shop),
    food_names: foods,
  }));
}

/** The week’s quotes, one a day in turn, so that the first few come from different days. */
function acrossDays(say: Teller): string[] {
  const days = groupBy(
    say.facts.filter((fact) => fact.kind === "quote"),
    (fact) => fact.on,
  );
  return [...days.values()]
    .flatMap((facts, day) => drawn(facts, say.week).map((fact, round) => ({ round, day, fact })))
    .sort((one, other) => one.round - other.round || one.day - other.day)
    .map(({ fact }, index) => say.sentence(fact, say.week + index));
}

/** Facts in the order of a lot that is drawn anew each turn, and that a further fact does not upset. */
function drawn(facts: readonly Fact[], turn: number): Fact[] {
  const lots = facts.map((fact) => ({ fact, lot: hash32(`${turn} ${fact.id}`) }));
  return lots.sort((one, other) => one.lot - other.lot).map(({ fact }) => fact);
}

function turned(items: readonly string[], turn: number): string | null {
  return items[turn % Math.max(1, items.length)] ?? null;
}
