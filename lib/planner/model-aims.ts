import type { ModelDraft } from "./model-draft.ts";
import { blocksOf, columnsOf } from "./model-rules.ts";
import { POINTS } from "./weights.ts";

/** Writes the aims of a model that tie items together: theme, colours, shops, kin, owed food. */
export function addAims(draft: ModelDraft): void {
  addThemes(draft);
  addColours(draft);
  for (const week of draft.weeks) {
    draft.builder.week = week;
    addShops(draft, week);
    addFamilies(draft, week);
  }
  addReturns(draft);
  addOwed(draft);
}

function addThemes(draft: ModelDraft): void {
  const { scope, builder, themeColumns, indexed } = draft;
  const { themeCount, themeAllowed, themeValues, lockedThemes } = indexed;
  if (scope.themes) {
    scope.blocks.forEach(({ week }, block) => {
      builder.week = week;
      const theme = scope.themes?.[week] ?? -1;
      if (theme >= 0) addFit(draft, block, theme, null);
    });
    // Chosen themes' own points: a column fixed at one, so that objectives compare.
    for (const week of draft.weeks) {
      builder.week = week;
      const theme = scope.themes[week] ?? -1;
      const points = theme < 0 ? 0 : (themeValues[week * themeCount + theme] ?? 0);
      if (points !== 0) builder.column(points, 1, 1, false);
    }
    return;
  }
  for (const week of draft.weeks) {
    builder.week = week;
    const locked = lockedThemes[week] ?? -1;
    for (let theme = 0; theme < themeCount; theme += 1) {
      const place = week * themeCount + theme;
      if (locked >= 0 ? theme !== locked : !themeAllowed[place]) continue;
      themeColumns[place] = builder.column(themeValues[place] ?? 0, locked >= 0 ? 1 : 0, 1, true);
      for (const block of blocksOf(draft, week))
        addFit(draft, block, theme, themeColumns[place] ?? 0);
    }
  }
  addThemeRules(draft);
}

/** One theme a week at most, and themes apart as far as they must be. */
function addThemeRules({ builder, themeColumns, indexed, weeks }: ModelDraft): void {
  const { themeCount, themeGaps, mondayNumbers } = indexed;
  const column = (week: number, theme: number): number =>
    themeColumns[week * themeCount + theme] ?? -1;
  const themes = [...Array(themeCount).keys()];
  for (const week of weeks) {
    const chosen = themes.map((theme) => column(week, theme)).filter((at) => at >= 0);
    if (chosen.length > 0) builder.row("one theme a week", chosen, 1, -Infinity, 1);
  }
  for (const theme of themes) {
    const once = weeks.map((week) => column(week, theme)).filter((at) => at >= 0);
    if (once.length > 1) builder.row("theme once", once, 1, -Infinity, 1);
    for (const other of themes.slice(theme + 1)) {
      const gap = themeGaps[theme * themeCount + other] ?? 0;
      if (gap === 0) continue;
      for (const week of weeks) {
        const near = weeks.filter(
          (late) => Math.abs((mondayNumbers[late] ?? 0) - (mondayNumbers[week] ?? 0)) < gap,
        );
        const own = column(week, theme);
        const others = near.map((late) => column(late, other)).filter((at) => at >= 0);
        for (const at of others)
          if (own >= 0) builder.row("near themes", [own, at], 1, -Infinity, 1);
      }
    }
  }
}

function addFit(draft: ModelDraft, block: number, theme: number, chosen: number | null): void {
  const { indexed, builder, columns, scope } = draft;
  const { itemCount, fits, problem } = indexed;
  const days = scope.blocks[block]?.days.length ?? 0;
  const items = [...Array(itemCount).keys()].filter(
    (item) =>
      (fits[theme * itemCount + item] ?? 0) > 0 && (columns[block * itemCount + item] ?? -1) >= 0,
  );
  if (items.length === 0) return;
  const most = POINTS.themeItemsMax * days;
  const fit = builder.column(problem.weights.theme * POINTS.theme, 0, most, false);
  const fitting = items.map((item) => columns[block * itemCount + item] ?? 0);
  const shares = items.map((item) => -(fits[theme * itemCount + item] ?? 0));
  builder.row("aim:theme", [fit, ...fitting], [1, ...shares], -Infinity, 0);
  if (chosen !== null) builder.row("aim:theme", [fit, chosen], [1, -most], -Infinity, 0);
}

function addColours(draft: ModelDraft): void {
  const { coloursOfItem, colourCount, problem } = draft.indexed;
  const points = problem.weights.colours * POINTS.colour;
  if (points === 0) return;
  const itemsOf = Array.from({ length: colourCount }, (_, colour) =>
    [...coloursOfItem.keys()].filter((item) => coloursOfItem[item]?.includes(colour)),
  );
  draft.scope.blocks.forEach(({ days, week }, block) => {
    draft.builder.week = week;
    const counted = itemsOf.flatMap((items) => {
      const bearing = columnsOf(draft, block, items);
      if (bearing.length === 0) return [];
      const colour = draft.builder.column(points, 0, days.length, false);
      draft.builder.row(
        "aim:colours",
        [colour, ...bearing],
        [1, ...bearing.map(() => -1)],
        -Infinity,
        0,
      );
      return [colour];
    });
    const most = POINTS.coloursMax * days.length;
    if (counted.length > 0) draft.builder.row("aim:colours", counted, 1, -Infinity, most);
  });
}

/**
 * One tour a week out of all combinations of shops; an item needs a tour that passes one of its shops.
 * Choosing among whole tours bounds far better than choosing shops one by one: a fraction of each of
 * two shops cannot stand in for a visit to either.
 */
function addShops(draft: ModelDraft, week: number): void {
  const { indexed, builder, columns } = draft;
  const { shopPoints, shopSets, shopSetOfItem, itemCount, tours } = indexed;
  if (shopPoints.every((points) => points === 0)) return;
  const chosen = tours.map(({ points }) => builder.column(points, 0, 1, true));
  draft.tours.push({ week, columns: chosen });
  builder.row("aim:shops", chosen, 1, 1, 1);
  const reach = [...shopSets].map((set) => {
    const passing = chosen.filter((_, tour) => ((tours[tour]?.shops ?? 0) & set) !== 0);
    const reached = builder.column(0, 0, 1, false);
    if (set !== 0)
      builder.row("aim:shops", [reached, ...passing], [1, ...passing.map(() => -1)], -Infinity, 0);
    return reached;
  });
  const blocks = blocksOf(draft, week);
  for (let item = 0; item < itemCount; item += 1) {
    const set = shopSetOfItem[item] ?? 0;
    if (set === 0) continue;
    const uses = blocks
      .map((block) => columns[block * itemCount + item] ?? -1)
      .filter((at) => at >= 0);
    for (const group of usesAtMostOnce(draft, item, uses)) {
      const most = Math.max(1, ...group.map((at) => builder.upperOf(at)));
      const values = [...group.map(() => 1), -most];
      builder.row("aim:shops", [...group, reach[set] ?? 0], values, -Infinity, 0);
    }
  }
}

/** One group where rest allows one use a week (the tighter row), else each use for itself. */
function usesAtMostOnce(draft: ModelDraft, item: number, uses: readonly number[]): number[][] {
  const { rests, restsOfItem } = draft.indexed;
  const rest = Math.max(...(restsOfItem[item] ?? []).map((at) => rests[at]?.restDays ?? 1));
  if (uses.length === 0) return [];
  return rest >= 7 ? [[...uses]] : uses.map((use) => [use]);
}

/** What comes again within the plan, counted once for all weeks. */
function addReturns(draft: ModelDraft): void {
  const { returns, dayCount } = draft.indexed;
  draft.builder.week = -1;
  for (const { items, points } of returns) {
    const uses = draft.scope.blocks.flatMap((_, block) => columnsOf(draft, block, items));
    if (points === 0 || uses.length === 0) continue;
    const again = draft.builder.column(points, 0, dayCount, false);
    const values = [-1, ...uses.map(() => 1)];
    draft.builder.row("aim:fresh", [again, ...uses], values, -Infinity, 1);
  }
}

function addFamilies(draft: ModelDraft, week: number): void {
  const { familyOfItem, familyCount, problem } = draft.indexed;
  const points = problem.weights.fresh * POINTS.familyRepeat;
  if (points === 0) return;
  const blocks = blocksOf(draft, week);
  for (let family = 0; family < familyCount; family += 1) {
    const items = [...familyOfItem.keys()].filter((item) => familyOfItem[item] === family);
    const uses = blocks.flatMap((block) => columnsOf(draft, block, items));
    if (uses.length === 0) continue;
    const repeats = draft.builder.column(points, 0, Infinity, false);
    const values = [-1, ...uses.map(() => 1)];
    draft.builder.row("aim:fresh", [repeats, ...uses], values, -Infinity, 1);
  }
}

function addOwed(draft: ModelDraft): void {
  const { owed } = draft.indexed;
  draft.builder.week = -1;
  owed.forEach((entry) => {
    const settling = draft.scope.blocks.flatMap(({ days }, block) =>
      days.some((day) => day <= entry.lastDay) ? columnsOf(draft, block, entry.items) : [],
    );
    if (settling.length === 0) return;
    const used = draft.builder.column(entry.points, 0, 1, false);
    const values = [1, ...settling.map(() => -1)];
    draft.builder.row("aim:owed", [used, ...settling], values, -Infinity, 0);
  });
}
