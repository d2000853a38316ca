import type { Db } from "#lib/db/index.ts";

/**
 * Numbers the episodes by the calendar: 1 for the first, or on from the last published one, whose
 * number stands in public and stays. Writes only the numbers that change.
 */
export async function numberByCalendar(tx: Db): Promise<void> {
  const rows = await tx.episode.findMany({
    orderBy: { weekOf: "asc" },
    select: { id: true, number: true, publishedAt: true },
  });
  let last = 0;
  for (const row of rows) {
    const number = row.publishedAt ? row.number : last + 1;
    if (number !== row.number) await tx.episode.update({ where: { id: row.id }, data: { number } });
    last = Math.max(last, number);
  }
}
