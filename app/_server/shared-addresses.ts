import "server-only";
import { networkInterfaces } from "node:os";
import { homeAddresses } from "#lib/access/index.ts";

/** The addresses that phones at home can open now; none unless the program was started to be shared. */
export function sharedAddresses(): readonly string[] {
  const [scheme, port] = (process.env["NOONBOOK_SHARED"] ?? "").split(":");
  if (!scheme || !port) return [];
  const interfaces = Object.values(networkInterfaces()).flatMap((one) => one ?? []);
  return homeAddresses(interfaces).map((address) => `${scheme}://${address}:${port}`);
}
