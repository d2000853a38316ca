import createGlpk from "glpk.js/node";
import type { ReadProgram } from "./read-lp.ts";

/** The optimum of a program by GLPK (glpk.js), which shares no code with our solver; -Infinity: none. */
export async function glpkOptimum({ costs, rows, bounds, general }: ReadProgram): Promise<number> {
  const glpk = await createGlpk();
  const vars = (terms: ReadonlyMap<string, number>): { name: string; coef: number }[] =>
    [...terms].map(([name, coef]) => ({ name, coef }));
  const types = { "=": glpk.GLP_FX, "<=": glpk.GLP_UP, ">=": glpk.GLP_LO } as const;
  const { result } = glpk.solve(
    {
      name: "program",
      objective: { direction: glpk.GLP_MAX, name: "value", vars: vars(costs) },
      subjectTo: rows.map(({ terms, sense, limit }, row) => ({
        name: `r${row}`,
        vars: vars(terms),
        bnds: { type: types[sense], lb: limit, ub: limit },
      })),
      bounds: [...bounds].map(([name, [lb, ub]]) => {
        if (ub === Infinity) return { name, type: glpk.GLP_LO, lb, ub: 0 };
        return { name, type: lb === ub ? glpk.GLP_FX : glpk.GLP_DB, lb, ub };
      }),
      generals: [...general],
    },
    { msglev: glpk.GLP_MSG_OFF, mipgap: 0 },
  );
  return result.status === glpk.GLP_OPT ? result.z : -Infinity;
}
