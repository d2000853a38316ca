import { ok, refuse, type Result } from "#lib/base/index.ts";
import { inTransaction, readPassphraseHash, writePassphraseHash } from "#lib/db/index.ts";
import type { Context } from "./context.ts";
import { hashPassphrase, isPassphrase } from "./passphrase-hash.ts";

export type SetPassphraseProblem = { readonly kind: "wrong-passphrase" };

/** Whether other devices could be let in at all. */
export async function hasPassphrase({ db }: Pick<Context, "db">): Promise<boolean> {
  return (await readPassphraseHash(db)) !== undefined;
}

/**
 * Sets the passphrase for other devices and sends every device out that the old one let in.
 * Refuses when one is set already and `current` is not it.
 */
export async function setPassphrase(
  { db }: Pick<Context, "db">,
  { current, next }: { readonly current?: string; readonly next: string },
): Promise<Result<undefined, SetPassphraseProblem>> {
  // Hashing takes a while: it is done before the transaction, which checks again what was read.
  const before = await readPassphraseHash(db);
  if (before && !(current !== undefined && (await isPassphrase(current, before)))) {
    return refuse({ kind: "wrong-passphrase" });
  }
  const hash = await hashPassphrase(next);
  return inTransaction(db, async (tx) => {
    if ((await readPassphraseHash(tx))?.hash !== before?.hash) {
      return refuse({ kind: "wrong-passphrase" });
    }
    await writePassphraseHash(tx, hash);
    await tx.session.deleteMany();
    await tx.attempt.deleteMany();
    return ok(undefined);
  });
}
