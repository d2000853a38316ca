import "server-only";

/** The time zone of the machine, which holds where the settings name none. */
export function machineZone(): string {
  return Intl.DateTimeFormat().resolvedOptions().timeZone;
}
