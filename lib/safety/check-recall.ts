import type { BoxLunch } from "./box.ts";
import { findingKey, type Finding } from "./finding.ts";
import { sentence } from "./words.ts";

/**
 * Items whose food or product the user marked as recalled or suspect, and items of which a product is
 * marked while nobody noted which one this is.
 */
export function checkRecall(lunch: BoxLunch): readonly Finding[] {
  return lunch.items.flatMap(({ id, food, product, recall, maybeRecalled }): Finding[] => {
    if (recall === null && maybeRecalled !== null) {
      return [
        {
          key: findingKey("maybe-recalled", [food.id]),
          kind: "recall",
          level: "look",
          sentence: `${sentence(maybeRecalled)} is marked as recalled or suspect, and which product this ${food.name} is stands nowhere.`,
          remedy: "Look at the pack, and note the product on the lunch or take another food.",
          sources: ["own-recall"],
          itemIds: [id],
          mayKeep: true,
        },
      ];
    }
    if (recall === null) return [];
    const why = recall.trim() === "" ? "" : ` (${recall.trim()})`;
    return [
      {
        key: findingKey("recall", [food.id]),
        kind: "recall" as const,
        level: "stop" as const,
        sentence: `${sentence(product?.name ?? food.name)} is marked as recalled or suspect${why}.`,
        remedy:
          "Keep it out and follow the notice. Take the mark off in the Larder when it is settled.",
        sources: ["own-recall" as const],
        itemIds: [id],
        mayKeep: false,
      },
    ];
  });
}
