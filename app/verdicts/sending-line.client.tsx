"use client";

import { Icon } from "#app/_ui/icon.tsx";
import type { Waiting } from "./outbox.client.ts";
import type { Sending } from "./send.client.ts";
import styles from "./verdicts.module.css";

/** What is not yet sent, always shown, and what could not be kept, with why. */
export function SendingLine({
  waiting,
  sending,
  isOpenOffline,
  nameOf,
  onRetry,
  onDiscard,
}: {
  readonly waiting: readonly Waiting[];
  readonly sending: Sending | "busy";
  /** Whether this page would open again without a connection; undefined while that is not known. */
  readonly isOpenOffline: boolean | undefined;
  readonly nameOf: (waiting: Waiting) => string;
  readonly onRetry: () => void;
  readonly onDiscard: (id: string) => void;
}) {
  const refused = waiting.filter(({ problem }) => problem !== undefined);
  const count = waiting.length - refused.length;
  return (
    <div className={styles.sending}>
      <p role="status" className="small">
        <Icon name={count > 0 ? "clock" : "check"} /> {sentence(count, sending)}
      </p>
      {count > 0 && sending !== "busy" && (
        <button className="btn plain slim" type="button" onClick={onRetry}>
          Send now
        </button>
      )}
      {isOpenOffline === true && (
        <p className="small quiet">This day also opens without a connection.</p>
      )}
      {isOpenOffline === false && (
        <p className="small quiet">
          Without a connection, keep this page open until all is sent: over this address the browser
          does not let it open again offline.
        </p>
      )}
      {refused.map((one) => (
        <div className="rule-error" key={one.entry.id}>
          <p>
            Not kept: {nameOf(one)}. {one.problem}
          </p>
          <button
            className="btn plain slim"
            type="button"
            onClick={() => {
              onDiscard(one.entry.id);
            }}
          >
            Let it go
          </button>
        </div>
      ))}
    </div>
  );
}

function sentence(count: number, sending: Sending | "busy"): string {
  if (count === 0) return "Everything tapped is kept.";
  const entries = count === 1 ? "1 entry waits" : `${count} entries wait`;
  if (sending === "locked") return `Kept on this phone. ${entries} until you sign in again.`;
  if (sending === "busy") return `Kept on this phone. ${entries}, sending …`;
  return `Kept on this phone. ${entries} for the kitchen network.`;
}
