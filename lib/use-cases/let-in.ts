import { createHash, randomBytes } from "node:crypto";
import { ATTEMPTS_FORGOTTEN_AFTER_MINUTES, SESSION_DAYS, waitSeconds } from "#lib/access/index.ts";
import { ok, refuse, type Result } from "#lib/base/index.ts";
import { inTransaction, readPassphraseHash } from "#lib/db/index.ts";
import type { Context } from "./context.ts";
import { isPassphrase } from "./passphrase-hash.ts";

type Door = Pick<Context, "db" | "now">;
export type LetInProblem =
  | { readonly kind: "no-passphrase" }
  | { readonly kind: "wrong-passphrase" }
  | { readonly kind: "wait"; readonly seconds: number };

/** A device that was let in. */
export type LetInDevice = {
  readonly id: string;
  readonly device: string;
  readonly createdAt: Date;
  readonly seenAt: Date;
};

const SEEN_AGAIN_AFTER_MS = 3_600_000;

/**
 * Lets a device in: answers the token its cookie carries; only the token's hash is kept.
 * An attempt counts as failed from before it is checked, so that many at once cannot outrun the wait.
 */
export async function letIn(
  { db, now }: Door,
  { passphrase, device }: { readonly passphrase: string; readonly device: string },
): Promise<Result<string, LetInProblem>> {
  const kept = await readPassphraseHash(db);
  if (!kept) return refuse({ kind: "no-passphrase" });
  const begun = await beginAttempt({ db, now });
  if (!begun.ok) return begun;
  if (!(await isPassphrase(passphrase.normalize("NFKC").trim(), kept))) {
    return refuse({ kind: "wrong-passphrase" });
  }
  const token = randomBytes(32).toString("base64url");
  const endsAt = new Date(now.getTime() + SESSION_DAYS * 86_400_000);
  await inTransaction(db, async (tx) => {
    await tx.attempt.deleteMany();
    await tx.session.deleteMany({ where: { endsAt: { lte: now } } });
    await tx.session.create({
      data: {
        tokenHash: hashOf(token),
        device: device.slice(0, 200),
        createdAt: now,
        seenAt: now,
        endsAt,
      },
    });
  });
  return ok(token);
}

/** Whether a token belongs to a session that has not ended; notes that it was seen, once an hour. */
export async function isLetIn({ db, now }: Door, token: string): Promise<boolean> {
  const session = await db.session.findUnique({ where: { tokenHash: hashOf(token) } });
  if (!session || session.endsAt <= now) return false;
  if (now.getTime() - session.seenAt.getTime() > SEEN_AGAIN_AFTER_MS) {
    await db.session.updateMany({ where: { tokenHash: session.tokenHash }, data: { seenAt: now } });
  }
  return true;
}

/** The devices that are let in now, last seen first. */
export async function listDevices({ db, now }: Door): Promise<readonly LetInDevice[]> {
  const rows = await db.session.findMany({
    where: { endsAt: { gt: now } },
    orderBy: { seenAt: "desc" },
  });
  return rows.map(({ tokenHash, device, createdAt, seenAt }) => ({
    id: tokenHash,
    device,
    createdAt,
    seenAt,
  }));
}

/** Sends one device out, or all of them; they must type the passphrase again. */
export async function sendOut(
  { db }: Pick<Context, "db">,
  which: { readonly id?: string },
): Promise<void> {
  const where = which.id === undefined ? {} : { tokenHash: which.id };
  await db.session.deleteMany({ where });
}

function beginAttempt({ db, now }: Door): Promise<Result<undefined, LetInProblem>> {
  return inTransaction(db, async (tx) => {
    const since = new Date(now.getTime() - ATTEMPTS_FORGOTTEN_AFTER_MINUTES * 60_000);
    await tx.attempt.deleteMany({ where: { at: { lte: since } } });
    const failures = (await tx.attempt.findMany()).map(({ at }) => at);
    const seconds = waitSeconds(failures, now);
    if (seconds > 0) return refuse({ kind: "wait", seconds });
    await tx.attempt.create({ data: { at: now } });
    return ok(undefined);
  });
}

function hashOf(token: string): string {
  return createHash("sha256").update(token).digest("hex");
}
