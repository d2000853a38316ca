/** A program read back from LP text: what another solver is given. */
export type ReadProgram = {
  readonly costs: ReadonlyMap<string, number>;
  readonly rows: readonly {
    readonly terms: ReadonlyMap<string, number>;
    readonly sense: "<=" | ">=" | "=";
    readonly limit: number;
  }[];
  readonly bounds: ReadonlyMap<string, readonly [lower: number, upper: number]>;
  readonly general: readonly string[];
};

/**
 * Reads the LP text format as far as our programs use it (sections, signed terms, two-sided bounds).
 * Written from the format's description (LP files as in the CPLEX and GLPK manuals), not from our writer.
 */
export function readLp(text: string): ReadProgram {
  const [, objective = "", subject = "", bounds = "", general = ""] =
    /^Maximize\n([\s\S]*?)Subject To\n([\s\S]*?)Bounds\n([\s\S]*?)(?:General\n([\s\S]*?))?End\n$/.exec(
      text,
    ) ?? [];
  const rows = subject
    .replaceAll(/\n {2,}/g, " ")
    .split("\n")
    .filter((line) => line.trim() !== "")
    .map((line) => {
      const [, body = "", sense = "", limit = ""] = /^ \w+: (.*) (<=|>=|=) (\S+)$/.exec(line) ?? [];
      if (!isSense(sense)) throw new Error(`no row: ${line}`);
      return { terms: readTerms(body), sense, limit: Number(limit) };
    });
  return {
    costs: readTerms(objective.replace(/^ *\w+:/, "").replaceAll("\n", " ")),
    rows,
    bounds: new Map(
      [...bounds.matchAll(/^ (\S+) <= (\w+) <= (\S+)$/gm)].map(([, low, name = "", high]) => [
        name,
        [number(low), number(high)] as const,
      ]),
    ),
    general: general
      .split("\n")
      .map((line) => line.trim())
      .filter((line) => line !== ""),
  };
}

function isSense(text: string): text is "<=" | ">=" | "=" {
  return ["<=", ">=", "="].includes(text);
}

function readTerms(text: string): Map<string, number> {
  const terms = new Map<string, number>();
  for (const [, sign, size, name = ""] of text.matchAll(
    /([+-]) (\d[\d.]*(?:e[+-]?\d+)?) ([a-z]\w*)/g,
  )) {
    terms.set(name, (terms.get(name) ?? 0) + (sign === "-" ? -1 : 1) * Number(size));
  }
  return terms;
}

function number(text = ""): number {
  return text.endsWith("inf") ? (text.startsWith("-") ? -Infinity : Infinity) : Number(text);
}
