import "server-only";
import { format } from "date-fns";
import { connection } from "next/server";
import { day, type Day } from "#lib/calendar/index.ts";
import { openDatabase, type Database } from "#lib/db/index.ts";
import type { Context } from "#lib/use-cases/context.ts";
import { databaseFile } from "./places.ts";

// One client for the process: bundling evaluates this module more than once.
const shared = globalThis as typeof globalThis & { noonbookDatabase?: Database };

/**
 * The real database and the real date. Awaiting the connection first keeps pages that take no
 * parameters from being frozen at build time.
 */
export async function requestContext(): Promise<Context> {
  await connection();
  const now = new Date();
  shared.noonbookDatabase ??= openDatabase(databaseFile());
  return { db: shared.noonbookDatabase, today: todayOf(now), now };
}

/** `NOONBOOK_TODAY` lets the tests and the screenshots stand on a fixed day. */
function todayOf(now: Date): Day {
  return day(process.env["NOONBOOK_TODAY"] ?? format(now, "yyyy-MM-dd"));
}
