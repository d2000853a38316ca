import { z } from "zod";
import type { Db } from "./client.ts";

const KEY = "access.passphrase";

/** A passphrase as kept: salt and scrypt hash in base64url, with the cost it was made with. */
export const PassphraseHash = z.object({
  salt: z.string(),
  hash: z.string(),
  cost: z.number().int().positive(),
});
export type PassphraseHash = z.infer<typeof PassphraseHash>;

/** The hash of the passphrase, or undefined while none is set. */
export async function readPassphraseHash(db: Db): Promise<PassphraseHash | undefined> {
  const row = await db.setting.findUnique({ where: { key: KEY } });
  return row ? PassphraseHash.parse(JSON.parse(row.valueJson)) : undefined;
}

/** Keeps a new hash in place of the one before. */
export async function writePassphraseHash(db: Db, hash: PassphraseHash): Promise<void> {
  const valueJson = JSON.stringify(hash);
  await db.setting.upsert({
    where: { key: KEY },
    create: { key: KEY, valueJson },
    update: { valueJson },
  });
}
