import { countUnitOf, EACH } from "./count-units.ts";
import { measureOf } from "./measures.ts";
import { leadingNumber, type LeadingNumber } from "./numbers.ts";

/** How much of something: the amount, the upper end of a range, and a measure or counted unit. */
export type Quantity = {
  readonly amount: number;
  /** Upper end of "1–2", or null when a single amount was given. */
  readonly amountMax: number | null;
  /** A measure's name ("cup"), a counted unit ("slice"), or "each" when only a number was given. */
  readonly unit: string;
};

/** A text taken apart: the quantity found in it, if any, and the words left over. */
export type ReadQuantity = {
  readonly quantity: Quantity | null;
  readonly rest: string;
  /** The text says "about" or gives a range. */
  readonly isApproximate: boolean;
};

const ABOUT = /^(?:about|around|approximately|approx\.?|roughly|circa|ca\.?|~)\s*/i;
const RANGE = /^\s*(?:-|–|—|to\b|or\b)\s*/i;
/** Words between number and unit that change nothing exact: "1 heaping tablespoon". */
const FILLER = /^(?:heaping|heaped|scant|level|generous|rounded|good|full|packed)\s+/i;
/** "1/2-inch slices" speaks of a size and "2% milk" of a share, not of an amount. */
const NO_AMOUNT = /^\s*-?\s*(?:inch(?:es)?|in\.|"|″|cm|mm|%|percent)(?![\p{L}])/iu;

/**
 * Finds the quantity in a phrase and hands back the rest: at the start ("1 1/2 cups grapes"), in a
 * part of its own ("baby carrots, half a cup", "hummus (2 tbsp)"), or at the end ("grapes 80 g",
 * "crackers x4"). Without one, `quantity` is null and `rest` the whole text. Never throws.
 */
export function readQuantity(text: string): ReadQuantity {
  const whole = text.trim();
  const atStart = quantityAtStart(whole);
  if (atStart) return atStart;
  return quantityInPart(whole) ?? quantityAtEnd(whole) ?? nothing(whole);
}

function nothing(rest: string): ReadQuantity {
  return { quantity: null, rest, isApproximate: false };
}

function quantityAtStart(text: string): ReadQuantity | undefined {
  const plain = text.replace(ABOUT, "").replace(/^\((?=\d)/, "");
  const first = leadingNumber(plain);
  if (!first || NO_AMOUNT.test(first.rest) || isPartOfName(first.rest)) return undefined;
  const { value: amount, max: amountMax, rest } = upperEnd(first);
  const multiplied = /^\s*[x×]\s*(?=[\d.])/i.exec(rest);
  const inner = multiplied ? leadingNumber(rest.slice(multiplied[0].length)) : undefined;
  const { unit, rest: name } = leadingUnit(inner ? inner.rest : rest.replace(/^\s*[x×]\s+/i, " "));
  const factor = inner?.value ?? 1;
  return {
    quantity: {
      amount: amount * factor,
      amountMax: amountMax === null ? null : amountMax * factor,
      unit,
    },
    rest: name,
    isApproximate: plain !== text || amountMax !== null,
  };
}

/** "7-grain bread" counts nothing; "8-oz pot" does. */
function isPartOfName(rest: string): boolean {
  const joined = /^-([\p{L}]+)/u.exec(rest)?.[1];
  return joined !== undefined && !measureOf(joined) && !countUnitOf(joined);
}

/** Reads on for the upper end of a range; "2-1" is no range, its second number stays in the rest. */
function upperEnd(first: LeadingNumber): { value: number; max: number | null; rest: string } {
  const joint = RANGE.exec(first.rest);
  const second = joint ? leadingNumber(first.rest.slice(joint[0].length)) : undefined;
  if (!second || second.value <= first.value || NO_AMOUNT.test(second.rest)) {
    return { value: first.value, max: null, rest: first.rest };
  }
  return { value: first.value, max: second.value, rest: second.rest };
}

function leadingUnit(text: string): { unit: string; rest: string } {
  const plain = text.replace(/^\s*-?\s*/, "").replace(FILLER, "");
  const words = /^(label cups?|fl\.?\s*oz\.?|fluid\s+ounces?|[\p{L}-]+\.?)(?=$|[\s,;)(/])/iu.exec(
    plain,
  );
  const word = words?.[1] ?? "";
  const unit = measureOf(word)?.name ?? countUnitOf(word);
  if (!unit) return { unit: EACH, rest: tidy(plain) };
  return { unit, rest: tidy(plain.slice(word.length)) };
}

function quantityInPart(text: string): ReadQuantity | undefined {
  const parts = text.split(/\s*[,()]\s*/);
  if (parts.length < 2) return undefined;
  for (const [index, part] of parts.entries()) {
    const found = index === 0 ? undefined : quantityAtStart(part);
    // A part of its own holds a quantity and nothing more: "carrots, 2 cm thick" holds none.
    if (!found || found.rest.replace(/^each$|^per child$/i, "") !== "") continue;
    const others = parts.filter((other, at) => at !== index && other !== "");
    const each = found.rest === "" ? [] : [found.rest];
    return { ...found, rest: [...others, ...each].join(", ") };
  }
  return undefined;
}

function quantityAtEnd(text: string): ReadQuantity | undefined {
  const times = /^(.*\S)\s+[x×]\s*(\d+(?:\.\d+)?)$/i.exec(text);
  if (times) return countedAtEnd(times[1] ?? "", Number(times[2]));
  const found = /^(.*\p{L}\)?)\s+((?:\d|\.\d|[¼½¾⅓⅔⅛]).*)$/u.exec(text);
  const quantity = found ? quantityAtStart(found[2] ?? "") : undefined;
  if (!quantity || quantity.rest !== "" || quantity.quantity?.unit === EACH) return undefined;
  return { ...quantity, rest: tidy(found?.[1] ?? "") };
}

function countedAtEnd(rest: string, amount: number): ReadQuantity | undefined {
  if (!(amount > 0) || !Number.isFinite(amount)) return undefined;
  return { quantity: { amount, amountMax: null, unit: EACH }, rest, isApproximate: false };
}

function tidy(text: string): string {
  return text
    .replace(/^[\s,.)-]+/, "")
    .replace(/^of\s+/i, "")
    .trim();
}
