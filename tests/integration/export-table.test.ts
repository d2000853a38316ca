import { parse } from "csv-parse/sync";
import { expect, test } from "vitest";
import { exportTable, listTables } from "#lib/use-cases/past/export-table.ts";
import { testContext } from "#tests/support/test-context.ts";

// Read back by a parser of RFC 4180 that shares nothing with the writer.
test("every record table leaves with all its rows and columns, quotes and line breaks too", async () => {
  const context = testContext();
  const { db } = context;
  const label = 'Boat "blessing",\r\nand a half day';
  await db.dayOff.create({ data: { id: "one", from: "2026-03-18", to: "2026-03-18", label } });
  const tables = await listTables(context);
  expect(tables.map(({ name }) => name)).toContain("Food");
  for (const { name, rows } of tables) {
    const text = await exportTable(context, name);
    const read: string[][] = parse(text ?? "");
    expect(read.length).toBe(rows + 1);
  }
  const days: Record<string, string>[] = parse((await exportTable(context, "DayOff")) ?? "", {
    columns: true,
  });
  expect(days).toEqual([{ id: "one", from: "2026-03-18", to: "2026-03-18", label }]);
});

test("what lets phones in never leaves, and a name of nothing is no table", async () => {
  const context = testContext();
  await context.db.setting.create({ data: { key: "access.passphrase", valueJson: '"kept"' } });
  expect(await exportTable(context, "Setting")).not.toContain("access.passphrase");
  for (const name of ["Session", "Attempt", "_prisma_migrations", "sqlite_master", "toString"]) {
    expect(await exportTable(context, name)).toBeUndefined();
  }
});
