/** What a verdict says of one child and one item. */
export type VerdictFields = {
  /** Quarters, 0 none … 4 all. */
  readonly eaten: number | null;
  /** 0–100 on the common axis. */
  readonly face: number | null;
  readonly quote: string;
  readonly note: string;
};
export type VerdictField = keyof VerdictFields;

/** One entry of a phone about one thing, as it arrived. */
export type PhoneEntry<Fields> = {
  readonly id: string;
  /** The phone it was made on. */
  readonly device: string;
  /** ISO instant by that phone's clock; rises with every entry of one phone. */
  readonly madeAt: string;
  /** How many entries the phone had seen applied when it was made. */
  readonly baseRevision: number;
  /** How many are applied with this one: the order of arrival. */
  readonly revision: number;
  readonly change: Partial<Fields>;
};
/** One entry about one child and one item, as it arrived. */
export type VerdictEntry = PhoneEntry<VerdictFields>;

/** Two phones said different things, neither knowing of the other. */
export type Disagreement<Fields> = {
  readonly field: keyof Fields & string;
  /** The latest made first: it stands until the user chooses. */
  readonly said: readonly {
    readonly value: Fields[keyof Fields] | null;
    readonly device: string;
    readonly madeAt: string;
  }[];
};
export type VerdictConflict = Disagreement<VerdictFields>;

export type Settled<Fields> = {
  readonly values: Fields;
  readonly conflicts: readonly Disagreement<Fields>[];
};

/** A child and an item that nothing was said of. */
const NOTHING_SAID: VerdictFields = { eaten: null, face: null, quote: "", note: "" };

/** What the entries about one child and one item add up to. */
export function settle(entries: readonly VerdictEntry[]): Settled<VerdictFields> {
  return settleFields(entries, NOTHING_SAID);
}

/**
 * What entries add up to, whatever order they arrived in and however often: field by field, an entry gives way
 * to a later one of its own phone and to any whose phone had seen it (a multi-value register: Shapiro,
 * Preguiça, Baquero & Zawirski 2011, INRIA RR-7506, §3.2.2, from memory). More than one value left is
 * a conflict; the one made last stands meanwhile. `nothing` is what stands where nothing was said.
 */
export function settleFields<Fields extends object>(
  entries: readonly PhoneEntry<Fields>[],
  nothing: Fields,
): Settled<Fields> {
  let values = nothing;
  const conflicts: Disagreement<Fields>[] = [];
  for (const field in nothing) {
    const setting = entries.filter(({ change }) => change[field] !== undefined);
    const left = setting.filter((entry) => !setting.some((other) => givesWay(entry, other)));
    const said = distinct(
      left
        .toSorted(latestFirst)
        .map(({ change, device, madeAt }) => ({ value: change[field] ?? null, device, madeAt })),
    );
    const [standing] = said;
    if (!standing) continue;
    values = { ...values, [field]: standing.value };
    if (said.length > 1) conflicts.push({ field, said });
  }
  return { values, conflicts };
}

type Stamp = Omit<PhoneEntry<unknown>, "change">;

function givesWay(entry: Stamp, other: Stamp): boolean {
  if (other.id === entry.id) return false;
  if (other.device === entry.device) return latestFirst(other, entry) < 0;
  return other.baseRevision >= entry.revision;
}

function latestFirst(one: Stamp, other: Stamp): number {
  if (one.madeAt !== other.madeAt) return one.madeAt > other.madeAt ? -1 : 1;
  return one.id > other.id ? -1 : 1;
}

function distinct<Said extends { readonly value: unknown }>(said: readonly Said[]): Said[] {
  return said.filter(
    ({ value }, index) => said.findIndex((other) => other.value === value) === index,
  );
}
