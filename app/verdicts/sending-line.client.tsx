"use client";

import { Icon } from "#app/_ui/icon.tsx";
import type { AllWaiting, Kind } from "./entries.ts";
import type { Sending } from "./send.client.ts";
import styles from "./verdicts.module.css";

/** What is not yet sent, always on the screen. */
export function SendingLine({
  waiting: { verdicts, facts, photos },
  sending,
  date,
  onRetry,
}: {
  readonly waiting: AllWaiting;
  readonly sending: Sending | "busy" | undefined;
  readonly date: string;
  readonly onRetry: () => void;
}) {
  const open = [...verdicts, ...facts, ...photos].filter(({ problem }) => problem === undefined);
  const refused = verdicts.length + facts.length + photos.length - open.length;
  const count = open.length;
  const isPassing = open.some((one) => one.isPassing);
  return (
    <div className={styles.sending}>
      <div>
        <p role="status">
          <Icon name={count > 0 ? "clock" : "check"} /> {sentence(count, sending)}
          {isPassing && " This browser has no room of its own: leave this page open until then."}
        </p>
        {refused > 0 && (
          <p className="small">
            <a href="#not-kept">{refused === 1 ? "One is" : `${refused} are`} not kept: see why.</a>
          </p>
        )}
      </div>
      {count > 0 && sending === "locked" && (
        <a className="btn plain slim" href={`/let-in?to=/verdicts/${date}`}>
          Sign in
        </a>
      )}
      {count > 0 && sending !== "busy" && sending !== "locked" && (
        <button className="btn plain slim" type="button" onClick={onRetry}>
          Send now
        </button>
      )}
    </div>
  );
}

function sentence(count: number, sending: Sending | "busy" | undefined): string {
  if (count === 0) return "Everything tapped is kept.";
  const entries = count === 1 ? "1 entry waits" : `${count} entries wait`;
  if (sending === "locked") return `Kept on this phone. ${entries} until you sign in again.`;
  if (sending === "busy") return `Kept on this phone. ${entries}, sending …`;
  return `Kept on this phone. ${entries} for the kitchen network.`;
}

/** Whether this page would open again without a connection; nothing while that is not known. */
export function OpenOffline({ isKept }: { readonly isKept: boolean | undefined }) {
  if (isKept === undefined) return null;
  return (
    <p className="small quiet">
      {isKept
        ? "This day also opens without a connection."
        : "Without a connection, keep this page open until all is sent: over this address the browser does not let it open again offline."}
    </p>
  );
}

/** Something the server will not keep. */
export type Refused = {
  readonly kind: Kind;
  readonly id: string;
  readonly what: string;
  readonly problem: string;
};

/** What could not be kept, with why; it stays on the phone until the user lets it go. */
export function NotKept({
  refused,
  onDiscard,
}: {
  readonly refused: readonly Refused[];
  readonly onDiscard: (kind: Kind, id: string) => Promise<void>;
}) {
  if (refused.length === 0) return null;
  return (
    <div id="not-kept" className={styles.notKept}>
      {refused.map(({ kind, id, what, problem }) => (
        <div className="rule-error" key={id}>
          <p>
            Not kept: {what}. {problem}
          </p>
          <button className="btn plain slim" type="button" onClick={() => void onDiscard(kind, id)}>
            Let it go
          </button>
        </div>
      ))}
    </div>
  );
}
