/** Failed attempts older than this no longer count. */
export const ATTEMPTS_FORGOTTEN_AFTER_MINUTES = 30;
const FREE_ATTEMPTS = 3;
const WAIT_SECONDS_MAX = 300;

/**
 * Seconds to wait before the next attempt: none for the first three failures, then doubling from
 * two seconds to five minutes. `failures` are the instants of failed attempts, in any order.
 */
export function waitSeconds(failures: readonly Date[], now: Date): number {
  const since = now.getTime() - ATTEMPTS_FORGOTTEN_AFTER_MINUTES * 60_000;
  const recent = failures.map((at) => at.getTime()).filter((at) => at > since);
  if (recent.length < FREE_ATTEMPTS) return 0;
  const pause = Math.min(WAIT_SECONDS_MAX, 2 ** (recent.length - FREE_ATTEMPTS + 1));
  return Math.max(0, Math.ceil((Math.max(...recent) + pause * 1000 - now.getTime()) / 1000));
}
