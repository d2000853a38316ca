import { z } from "zod";

type Limits = { readonly min: number; readonly max: number; readonly whole?: boolean };

/** A number as typed, with a decimal comma or point; null where the field is empty. */
export function typedNumber({ min, max, whole = false }: Limits) {
  return z
    .string()
    .trim()
    .max(20, { error: "That is too long for a number." })
    .transform((text, context): number | null => {
      if (text === "") return null;
      const value = Number(text.replace(",", "."));
      if (Number.isFinite(value) && value >= min && value <= max && !(whole && value % 1 !== 0))
        return value;
      const kind = whole ? "a whole number" : "a number";
      context.addIssue({ code: "custom", message: `Write ${kind} from ${min} to ${max}.` });
      return z.NEVER;
    });
}

/** A number that must be there. */
export function neededNumber(limits: Limits, missing: string) {
  return typedNumber(limits).transform((value, context): number => {
    if (value !== null) return value;
    context.addIssue({ code: "custom", message: missing });
    return z.NEVER;
  });
}

/** Money as typed, in whole units with two digits, kept in cents; null where the field is empty. */
export const typedMoney = typedNumber({ min: 0, max: 9999 }).transform((value) =>
  value === null ? null : Math.round(value * 100),
);

/** The lines of a text, trimmed, each once, empty ones left out. */
export function linesOf(text: string): string[] {
  return [...new Set(text.split("\n").map((line) => line.trim()))].filter((line) => line !== "");
}

/** The words of a text parted by commas, as slugs: "Night sky, moon" gives "night-sky" and "moon". */
export function slugsOf(text: string): string[] {
  return [...new Set(text.split(/[,\n]/).map(slugOf))].filter((slug) => slug !== "");
}

/** A name as an id: small letters, digits and hyphens; empty where nothing of it is left. */
export function slugOf(name: string): string {
  return name
    .normalize("NFKD")
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, "-")
    .replaceAll(/^-+|-+$/g, "")
    .slice(0, 80);
}
