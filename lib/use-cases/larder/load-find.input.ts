import { z } from "zod";

/** The address of a search, read leniently. */
export const FindInput = z.object({
  q: z.string().trim().max(200).catch("").default(""),
  kind: z.enum(["food", "product", "trick", "theme"]).optional().catch(undefined),
  id: z.string().max(120).optional().catch(undefined),
  page: z.coerce.number().int().min(1).max(10_000).default(1).catch(1),
});
export type FindInput = z.infer<typeof FindInput>;
