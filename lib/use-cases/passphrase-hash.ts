import { randomBytes, scrypt, timingSafeEqual } from "node:crypto";
import { promisify } from "node:util";
import type { PassphraseHash } from "#lib/db/index.ts";

const derive = promisify<
  string,
  Buffer,
  number,
  { N: number; r: number; p: number; maxmem: number },
  Buffer
>(scrypt);
/** scrypt N = 2^16, r = 8, p = 1: about 64 MB and a fifth of a second an attempt (RFC 7914 §2). */
const COST = 2 ** 16;
const LENGTH = 32;

/** Hashes a passphrase with a salt of its own. */
export async function hashPassphrase(passphrase: string): Promise<PassphraseHash> {
  const salt = randomBytes(16);
  const hash = await stretch(passphrase, salt, COST);
  return { salt: salt.toString("base64url"), hash: hash.toString("base64url"), cost: COST };
}

/** Whether a passphrase is the one hashed; takes as long either way. */
export async function isPassphrase(passphrase: string, kept: PassphraseHash): Promise<boolean> {
  const hash = await stretch(passphrase, Buffer.from(kept.salt, "base64url"), kept.cost);
  const expected = Buffer.from(kept.hash, "base64url");
  return hash.length === expected.length && timingSafeEqual(hash, expected);
}

function stretch(passphrase: string, salt: Buffer, cost: number): Promise<Buffer> {
  return derive(passphrase, salt, LENGTH, { N: cost, r: 8, p: 1, maxmem: 256 * cost * 8 });
}
