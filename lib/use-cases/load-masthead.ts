import type { Context } from "./context.ts";

export type Masthead = {
  /** Undefined before a series is started. */
  readonly seriesName: string | undefined;
  readonly isDemo: boolean;
};

/** What the top of every page says. */
export async function loadMasthead({ db }: Context): Promise<Masthead> {
  const series = await db.series.findUnique({ where: { id: 1 } });
  return { seriesName: series?.name, isDemo: series?.isDemo ?? false };
}
