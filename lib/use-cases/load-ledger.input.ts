import { z } from "zod";

/** How far back the ledger looks; an address that names no span means a year. */
export const LedgerSpan = z.enum(["quarter", "year", "all"]).catch("year");
export type LedgerSpan = z.infer<typeof LedgerSpan>;
