import { randomUUID } from "node:crypto";
import { copyFileSync } from "node:fs";
import path from "node:path";
import { onTestFinished } from "vitest";
import { day } from "#lib/calendar/index.ts";
import { openDatabase } from "#lib/db/index.ts";
import type { Context } from "#lib/use-cases/context.ts";
import { templateFile, templateFolder } from "./template-database.ts";

/** A context on a database file of its own, with the catalogue loaded; closed when the test ends. */
export function testContext(today = "2026-03-11"): Context {
  const file = path.join(templateFolder, `${randomUUID()}.db`);
  copyFileSync(templateFile, file);
  const db = openDatabase(file);
  onTestFinished(() => db.$disconnect());
  return { db, today: day(today), now: new Date(`${today}T09:00:00Z`) };
}
