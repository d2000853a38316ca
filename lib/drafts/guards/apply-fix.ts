import { chaptersIn } from "../timing/chapters.ts";
import { capital } from "../words/index.ts";
import type { Fix, OwnSentence } from "./check.ts";

/** The text after a fix; a fix whose sentence is gone changes nothing. */
export function applyFix(lines: readonly (readonly OwnSentence[])[], fix: Fix): string {
  const texts = lines.map((line) => line.map(({ text }) => text));
  switch (fix.kind) {
    case "begin":
      return joined(beginWith(texts, fix.text));
    case "chapters":
      return joined(withChapters(texts, fix.text));
    case "strike":
      return joined(
        texts.map((line, index) =>
          index === fix.place.line ? line.filter((_, at) => at !== fix.place.at) : line,
        ),
      );
    case "replace": {
      const [from, to] = fix.span;
      return joined(
        texts.map((line, index) =>
          line.map((text, at) =>
            index === fix.place.line && at === fix.place.at
              ? capital(`${text.slice(0, from)}${fix.text}${text.slice(to)}`)
              : text,
          ),
        ),
      );
    }
  }
}

/** Puts a sentence first; in an outline, first of what is spoken. A later copy of it goes. */
function beginWith(lines: readonly (readonly string[])[], text: string): string[][] {
  const without = lines.map((line) => line.filter((one) => one !== text));
  const spoken = without.findIndex((line) => line[0]?.startsWith("Sound:"));
  if (spoken === -1) return [[text], ...without];
  return without.map((line, index) =>
    index === spoken
      ? ["Sound:", text, ...line].flatMap((one, at) =>
          at === 2 ? [one.replace(/^Sound:\s*/u, "")] : [one],
        )
      : line,
  );
}

/** Puts other chapter lines where the first of the present ones stands; the present ones go. */
function withChapters(lines: readonly (readonly string[])[], text: string): string[][] {
  const own = new Set(chaptersIn(lines.map((line) => line.join(" "))).map(({ line }) => line));
  const [first] = own;
  return lines.flatMap((line, index) =>
    index === first && text !== "" ? [[text]] : own.has(index) ? [] : [[...line]],
  );
}

function joined(lines: readonly (readonly string[])[]): string {
  return lines
    .map((line) => line.filter((text) => text !== "").join(" "))
    .join("\n")
    .replace(/\n{3,}/gu, "\n\n")
    .trim();
}
