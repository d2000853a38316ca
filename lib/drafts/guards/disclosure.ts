import { PRIVATE_KINDS } from "../template/kinds.ts";
import { capital, counted } from "../words/index.ts";
import type { Check, Finding, GuardGround, OwnSentence } from "./check.ts";

/**
 * What was given or paid is said first, in every text that shows it and in the spoken outline
 * (16 CFR 255.5; clear and hard to miss, so before any fold).
 */
export function checkDisclosure(
  lines: readonly (readonly OwnSentence[])[],
  ground: GuardGround,
): Check {
  const { owed, kind, limits } = ground;
  const isPublic = !PRIVATE_KINDS.has(kind);
  const missing = isPublic ? owed.filter((text) => !standsFirst(lines, text, ground)) : [];
  const text = lines.map((line) => line.map((one) => one.text).join(" ")).join("\n");
  const findings = missing.map((disclosure): Finding => {
    const isLate = text.includes(disclosure);
    return {
      key: `disclosure: ${disclosure}`,
      ...{ place: null, span: null },
      text: isLate
        ? `“${disclosure}” comes too late: it belongs at the start, within the first ${limits.firstLinesMax} letters.`
        : `“${disclosure}” is not said.`,
      fixes: [{ kind: "begin", label: "Say it first", text: disclosure }],
    };
  });
  return {
    ...{ kind: "disclosure", level: "stop", title: "Disclosure stands first", findings },
    passed:
      owed.length === 0
        ? "Nothing given or paid in what this tells of."
        : isPublic
          ? `${capital(counted(owed.length, "disclosure", "disclosures"))} owed, each said at the start.`
          : "This one is for your eyes: it need not say so.",
  };
}

/** At the start: only other disclosures before it, and seen before a reader unfolds the rest. */
function standsFirst(
  lines: readonly (readonly OwnSentence[])[],
  disclosure: string,
  { kind, owed, limits }: GuardGround,
): boolean {
  const sentences = kind === "outline" ? spoken(lines) : lines.flat().map(({ text }) => text);
  let before = "";
  for (const sentence of sentences) {
    before += ` ${sentence}`;
    if (before.includes(disclosure)) {
      return (
        kind === "outline" || before.trim().length <= Math.max(limits.firstLinesMax, totalOf(owed))
      );
    }
    const isOther = owed.some((other) => other.includes(sentence) || sentence.includes(other));
    if (!isOther && kind !== "outline") return false;
  }
  return false;
}

function totalOf(owed: readonly string[]): number {
  return owed.join(" ").length;
}

/** The sentences of the first spoken part of an outline. */
function spoken(lines: readonly (readonly OwnSentence[])[]): string[] {
  const first = lines.find((line) => line[0]?.text.startsWith("Sound:"));
  return (first ?? []).map(({ text }) => text.replace(/^Sound:\s*/u, ""));
}
