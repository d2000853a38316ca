import type { Database } from "#lib/db/index.ts";
import type { Day } from "#lib/calendar/index.ts";

/** What every use case is handed: the database and the day it is. Tests build their own. */
export type Context = {
  readonly db: Database;
  readonly today: Day;
  /** The instant of the request, for time stamps. */
  readonly now: Date;
};
