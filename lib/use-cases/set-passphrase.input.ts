import { z } from "zod";
import { Passphrase } from "#lib/access/index.ts";

/** A passphrase for other devices; `current` is asked for once one is set. */
export const SetPassphraseInput = z
  .object({
    current: z.string().max(200).default(""),
    next: Passphrase,
    again: z.string().max(200),
  })
  .refine(({ next, again }) => again.normalize("NFKC").trim() === next, {
    path: ["again"],
    message: "The two differ. Type the new passphrase once more.",
  });
export type SetPassphraseInput = z.infer<typeof SetPassphraseInput>;
