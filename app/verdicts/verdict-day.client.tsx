"use client";

import type { ReactNode } from "react";
import type { VerdictItem } from "#lib/use-cases/load-verdict-day.ts";
import type { PhotoView } from "#lib/use-cases/photos/photos.ts";
import { dayFacts } from "./day-facts.client.ts";
import type { AllWaiting } from "./entries.ts";
import { FactsForm } from "./facts-form.client.tsx";
import { useOpenOffline } from "./open-offline.client.ts";
import type { Person } from "./person.ts";
import { PhotoShelf } from "./photo-shelf.client.tsx";
import { NotKept, OpenOffline, SendingLine, type Refused } from "./sending-line.client.tsx";
import { usePhone, type Given } from "./use-phone.client.ts";
import { useVerdicts } from "./use-verdicts.client.ts";
import { VerdictDesk } from "./verdict-desk.client.tsx";
import styles from "./verdicts.module.css";

/** A day at the verdict table: everything said of it is kept on this phone until the server has it. */
export function VerdictDay({
  given,
  monday,
  items,
  people,
  photos,
  children,
}: {
  readonly given: Given;
  readonly monday: string;
  readonly items: readonly VerdictItem[];
  readonly people: readonly Person[];
  readonly photos: readonly PhotoView[];
  /** What stands between the verdicts and the facts of the day. */
  readonly children: ReactNode;
}) {
  const phone = usePhone(given);
  const desk = useVerdicts(phone);
  const facts = dayFacts(phone);
  const isOpenOffline = useOpenOffline();
  const { lunchId } = given.day;
  const known = new Set(photos.map(({ id }) => id));
  const fresh = phone.photos.filter(({ id }) => !known.has(id));
  return (
    <div className={styles.day}>
      <VerdictDesk desk={desk} items={items} people={people} otherClashes={facts.clashes} />
      <NotKept
        refused={refusedOf(phone.waiting, { lunchId, items, people })}
        onDiscard={phone.discard}
      />
      {children}
      <FactsForm facts={facts.values} isWaiting={facts.isWaiting} onSay={facts.say} />
      <PhotoShelf
        monday={monday}
        photos={[...photos, ...fresh]}
        waiting={phone.waiting.photos.filter(({ entry }) => entry.lunchId === lunchId)}
        onTake={(photo) => {
          void phone.keep("photos", (stamp) => {
            const { id, madeAt } = stamp();
            return [{ ...photo, id, madeAt, lunchId }];
          });
        }}
      />
      <OpenOffline isKept={isOpenOffline} />
      <SendingLine
        waiting={phone.waiting}
        sending={phone.sending}
        date={given.date}
        onRetry={() => void phone.send()}
      />
    </div>
  );
}

type Names = {
  readonly lunchId: string;
  readonly items: readonly VerdictItem[];
  readonly people: readonly Person[];
};

/** What the server will not keep, of this day or another, in words. */
function refusedOf(
  { verdicts, facts, photos }: AllWaiting,
  { lunchId, items, people }: Names,
): readonly Refused[] {
  const dayOf = (id: string): string => (id === lunchId ? "this day" : "another day");
  const refused: Refused[] = [];
  for (const { entry, problem } of verdicts) {
    const item = items.find(({ id }) => id === entry.itemId)?.name ?? "an item of another day";
    const child = people.find(({ id }) => id === entry.childId)?.name ?? "a child";
    if (problem)
      refused.push({ kind: "verdicts", id: entry.id, what: `${item}, ${child}`, problem });
  }
  for (const { entry, problem } of facts) {
    const what = `the facts of ${dayOf(entry.lunchId)}`;
    if (problem) refused.push({ kind: "facts", id: entry.id, what, problem });
  }
  for (const { entry, problem } of photos) {
    const what = `a photo of ${dayOf(entry.lunchId)}`;
    if (problem) refused.push({ kind: "photos", id: entry.id, what, problem });
  }
  return refused;
}
