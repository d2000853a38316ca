import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { X509Certificate } from "node:crypto";
import path from "node:path";
import { generate } from "selfsigned";

export type Certificate = { readonly cert: string; readonly key: string };

/** Browsers refuse certificates that last longer than 398 days (CA/Browser Forum ballot SC31, from memory). */
const DAYS = 365;

/**
 * A certificate made on this computer for these addresses, kept in a folder and made anew when the addresses
 * changed or it ends within a week. No authority vouches for it: each device warns once.
 */
export async function localCertificate(
  folder: string,
  addresses: readonly string[],
  now: Date,
): Promise<Certificate> {
  const certFile = path.join(folder, "certificate.pem");
  const keyFile = path.join(folder, "certificate-key.pem");
  if (existsSync(certFile) && existsSync(keyFile)) {
    const kept = { cert: readFileSync(certFile, "utf8"), key: readFileSync(keyFile, "utf8") };
    if (isGoodFor(kept.cert, addresses, now)) return kept;
  }
  const made = await generate([{ name: "commonName", value: "Noonbook at home" }], {
    keyType: "ec",
    curve: "P-256",
    algorithm: "sha256",
    notBeforeDate: new Date(now.getTime() - 86_400_000),
    notAfterDate: new Date(now.getTime() + DAYS * 86_400_000),
    extensions: [
      { name: "basicConstraints", cA: false, critical: true },
      { name: "keyUsage", digitalSignature: true, critical: true },
      { name: "extKeyUsage", serverAuth: true },
      { name: "subjectAltName", altNames: addresses.map((ip) => ({ type: 7 as const, ip })) },
    ],
  });
  mkdirSync(folder, { recursive: true });
  writeFileSync(keyFile, made.private, { mode: 0o600 });
  writeFileSync(certFile, made.cert);
  return { cert: made.cert, key: made.private };
}

/** SHA-256 of a certificate, as a device shows it, to compare by eye before trusting it. */
export function fingerprint(cert: string): string {
  return new X509Certificate(cert).fingerprint256;
}

function isGoodFor(cert: string, addresses: readonly string[], now: Date): boolean {
  const kept = new X509Certificate(cert);
  const weekLater = new Date(now.getTime() + 7 * 86_400_000);
  return (
    new Date(kept.validTo) > weekLater &&
    addresses.every((address) => kept.checkIP(address) !== undefined)
  );
}
