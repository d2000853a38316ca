import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Page } from "playwright-core";

const source = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

type Finding = { readonly id: string; readonly nodes: readonly { readonly html: string }[] };

/** What axe-core (WCAG 2.2 A and AA rules) finds on the page as it stands; empty when nothing. */
export async function axeFindings(page: Page): Promise<string[]> {
  await page.evaluate(source);
  const violations = (await page.evaluate<unknown>(
    `axe.run(document, { runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] }).then((result) => result.violations)`,
  )) as Finding[];
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html).join(" | ")}`);
}
