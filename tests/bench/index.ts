import { benchMatching } from "./matching.ts";
import { benchReactions } from "./reactions.ts";
import { benchRepeats } from "./repeats.ts";
import { benchShopping } from "./shopping.ts";

// `npm run bench`: ratios and counts tell more than milliseconds, which depend on the machine.
for (const bench of [benchMatching, benchRepeats, benchReactions, benchShopping]) {
  for (const { name, value, unit } of bench()) {
    console.log(`${name}: ${Number(value.toPrecision(3))} ${unit}`);
  }
}
