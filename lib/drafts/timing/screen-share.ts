/** How much of an episode a child is seen or spoken of. */
export type ScreenShare = {
  readonly name: string;
  readonly seconds: number;
  /** 0 to 100. */
  readonly percent: number;
  /** The share named in the user’s own note, when it is passed. */
  readonly beyond: number | null;
};

/**
 * Each child’s share of the running time beside the share that the user’s note on local law names, the
 * first percentage in it. A caution, never a judgement of law.
 */
export function screenShares(
  children: readonly { readonly name: string; readonly seconds: number }[],
  totalSeconds: number,
  note: string,
): ScreenShare[] {
  const most = shareNamed(note);
  return children.map(({ name, seconds }) => {
    const percent = totalSeconds > 0 ? Math.min(100, (seconds / totalSeconds) * 100) : 0;
    return { name, seconds, percent, beyond: most !== null && percent >= most ? most : null };
  });
}

/** The first percentage in a note, 0 to 100; null when it names none. */
export function shareNamed(note: string): number | null {
  const named = /(\d{1,3})(?:[.,]\d+)?\s*(?:%|per ?cent)/iu.exec(note)?.[1];
  return named === undefined ? null : Number(named);
}
