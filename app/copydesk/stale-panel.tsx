import type { FactChange } from "#lib/drafts/index.ts";
import type { StaleView } from "#lib/use-cases/piece-of.ts";
import { Icon } from "#app/_ui/icon.tsx";
import { MergeForm } from "./merge-form.client.tsx";
import type { PieceKey } from "./piece-key.ts";

/** What changed in the records since a draft was written, what that would change, and how to take it over. */
export function StalePanel({
  piece,
  stale,
}: {
  readonly piece: PieceKey;
  readonly stale: StaleView;
}) {
  const count = Math.max(stale.outdated.length, stale.fresh.length);
  return (
    <MergeForm
      id="stale"
      piece={piece}
      merge={stale}
      from="records"
      anew={false}
      button="Bring it up to date"
    >
      <p>
        <Icon name="pencil" />{" "}
        <b>
          Stale: {count} {count === 1 ? "sentence needs" : "sentences need"} a second look.
        </b>{" "}
        {stale.changes.map(changeText).join(" ")}
      </p>
    </MergeForm>
  );
}

/** "Pepper’s verdict of Thu 5 March changed: kiwi was ½, is ¼." */
function changeText({ label, was, now }: FactChange): string {
  if (!was) return `New: ${label}.`;
  if (!now) return `Gone: ${label}.`;
  const names = [...new Set([...was, ...now].map(([name]) => name))];
  const parts = names.flatMap((name) => {
    const [before, after] = [was, now].map((rows) => rows.find(([one]) => one === name)?.[1]);
    if (before === after) return [];
    return [`${name} was ${before ?? "not there"}, is ${after ?? "gone"}`];
  });
  return `${label} changed: ${parts.join("; ")}.`;
}
