import type { ModelDraft } from "./model-draft.ts";
import { packable, restSpans } from "./packing.ts";
import type { Block } from "./model-draft.ts";
import type { IndexedQuota } from "./indexed.ts";

/** Writes the hard rules of a model. Each row carries the name of its rule. */
export function addRules(draft: ModelDraft): void {
  addParts(draft);
  addRests(draft);
  addMinutes(draft);
  addBudgets(draft);
  addNewFoods(draft);
  draft.indexed.quotas.forEach((quota, position) => addQuota(draft, quota, position));
}

/** Columns of some items in a block, where possible. */
export function columnsOf(draft: ModelDraft, block: number, items: Iterable<number>): number[] {
  const from = block * draft.indexed.itemCount;
  return [...items].map((item) => draft.columns[from + item] ?? -1).filter((column) => column >= 0);
}

/** Positions of the blocks of a week. */
export function blocksOf(draft: ModelDraft, week: number): number[] {
  return [...draft.scope.blocks.keys()].filter((block) => draft.scope.blocks[block]?.week === week);
}

/** All columns of items in a block, and one figure of each item. */
function weighed(draft: ModelDraft, block: number, figures: Float64Array): [number[], number[]] {
  const from = block * draft.indexed.itemCount;
  const items = [...figures.keys()].filter(
    (item) => figures[item] !== 0 && (draft.columns[from + item] ?? -1) >= 0,
  );
  return [
    items.map((item) => draft.columns[from + item] ?? 0),
    items.map((item) => figures[item] ?? 0),
  ];
}

function addParts(draft: ModelDraft): void {
  const { itemsOfPart, problem } = draft.indexed;
  draft.scope.blocks.forEach(({ days }, block) => {
    problem.parts.forEach(({ part, min, max }, number) => {
      const columns = columnsOf(draft, block, itemsOfPart[number] ?? []);
      draft.builder.row(`part:${part}`, columns, 1, min * days.length, max * days.length);
    });
  });
}

function addRests(draft: ModelDraft): void {
  const { indexed, scope, builder } = draft;
  const blocks = scope.blocks.map(({ days }) => days);
  indexed.rests.forEach((rest, position) => {
    const rule = `rest:${indexed.problem.rests[position]?.id ?? "once in a lunch"}`;
    for (const { from, to, most } of restSpans(indexed, rest, blocks)) {
      const span = Array.from({ length: to - from + 1 }, (_, more) => from + more);
      const columns = span.flatMap((block) => columnsOf(draft, block, rest.items));
      if (columns.length > 1) builder.row(rule, columns, 1, -Infinity, most);
    }
  });
}

function addMinutes(draft: ModelDraft): void {
  const { minutes, minutesMax, problem } = draft.indexed;
  draft.scope.blocks.forEach((block, number) => {
    const limit = block.days.reduce((sum, day) => sum + (minutesMax[day] ?? Infinity), 0);
    const date = problem.weeks[block.week]?.days[0]?.date ?? "";
    if (limit < Infinity) {
      draft.builder.row(`minutes:${date}`, ...weighed(draft, number, minutes), -Infinity, limit);
    }
  });
}

function addBudgets(draft: ModelDraft): void {
  const { costs, budgets, problem } = draft.indexed;
  for (const week of draft.weeks) {
    const limit = budgets[week] ?? Infinity;
    if (limit === Infinity) continue;
    const sums = blocksOf(draft, week).map((block) => weighed(draft, block, costs));
    const columns = sums.flatMap(([ofBlock]) => ofBlock);
    const cents = sums.flatMap(([, ofBlock]) => ofBlock);
    draft.builder.row(
      `budget:${problem.weeks[week]?.monday ?? ""}`,
      columns,
      cents,
      -Infinity,
      limit,
    );
  }
}

function addNewFoods(draft: ModelDraft): void {
  const { isNew, itemCount, problem } = draft.indexed;
  const { perLunchMax, perWeekMax, perWeekMin } = problem.newFoods;
  const unknown = [...Array(itemCount).keys()].filter((item) => isNew[item]);
  for (const week of draft.weeks) {
    const blocks = blocksOf(draft, week);
    const columns = blocks.flatMap((block) => columnsOf(draft, block, unknown));
    draft.builder.row("new foods", columns, 1, perWeekMin, perWeekMax);
    for (const block of blocks) {
      const most = perLunchMax * (draft.scope.blocks[block]?.days.length ?? 0);
      if (most < perWeekMax) {
        draft.builder.row("new foods", columnsOf(draft, block, unknown), 1, -Infinity, most);
      }
    }
  }
}

function addQuota(draft: ModelDraft, quota: IndexedQuota, position: number): void {
  const rule = `quota:${draft.indexed.problem.quotas[position]?.id ?? ""}`;
  const member = new Set(quota.items);
  if (quota.isWeekly) {
    for (const week of draft.weeks.filter((number) => quota.isOn[number])) {
      const columns = blocksOf(draft, week).flatMap((block) => columnsOf(draft, block, member));
      draft.builder.row(rule, columns, 1, quota.min, quota.max);
    }
    return;
  }
  draft.scope.blocks.forEach((block, number) => {
    const days = block.days.filter((day) => quota.isOn[day]).length;
    if (days === 0) return;
    // Where only some days of a block are meant, others may hold what these must not.
    const spare = block.days.length - days;
    const most = spare === 0 ? quota.max * days : quota.max * days + spareUses(draft, block, quota);
    draft.builder.row(rule, columnsOf(draft, number, member), 1, quota.min * days, most);
  });
}

/** Most uses of a quota's items on the days of a block that the quota is not about. */
function spareUses(draft: ModelDraft, block: Block, quota: IndexedQuota): number {
  const { dayNumbers, cells } = draft.indexed;
  const spare = block.days.filter((day) => !quota.isOn[day]);
  return packable(dayNumbers, spare, 1) * cells.length;
}
