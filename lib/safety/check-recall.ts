import type { BoxLunch } from "./box.ts";
import { findingKey, type Finding } from "./finding.ts";
import { sentence } from "./words.ts";

/** Items whose food or product the user marked as recalled or suspect. */
export function checkRecall(lunch: BoxLunch): readonly Finding[] {
  return lunch.items.flatMap(({ id, food, product, recall }) => {
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
