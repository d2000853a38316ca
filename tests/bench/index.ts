import { benchDrafts } from "./drafts.ts";
import { benchAblation } from "./ablation.ts";
import { benchLoop } from "./loop.ts";
import { benchMatching } from "./matching.ts";
import { benchPages } from "./pages.ts";
import { benchPast } from "./past.ts";
import { benchPlannerHistory } from "./planner-history.ts";
import { benchPlanner } from "./planner.ts";
import { benchPrep } from "./prep.ts";
import { benchReactions } from "./reactions.ts";
import { benchRepeats } from "./repeats.ts";
import { benchSearch } from "./search.ts";
import { benchShopping } from "./shopping.ts";

const BENCHES = {
  matching: benchMatching,
  repeats: benchRepeats,
  reactions: benchReactions,
  shopping: benchShopping,
  prep: benchPrep,
  search: benchSearch,
  past: benchPast,
  planner: benchPlanner,
  "planner-history": benchPlannerHistory,
  drafts: benchDrafts,
  ablation: benchAblation,
  loop: benchLoop,
  pages: benchPages,
} as const;

// `npm run bench` runs all, `npm run bench -- pages` one. Ratios and counts tell more than milliseconds,
// which depend on the machine.
const wanted = process.argv.slice(2);
for (const [subject, bench] of Object.entries(BENCHES)) {
  if (wanted.length > 0 && !wanted.includes(subject)) continue;
  for (const { name, value, unit } of await bench()) {
    console.log(`${name}: ${Number(value.toPrecision(3))} ${unit}`);
  }
}
