import type { MergeView } from "#lib/use-cases/piece-of.ts";
import { MergeForm } from "./merge-form.client.tsx";
import type { PieceKey } from "./piece-key.ts";

/** Offers the latest version of the template to a draft written with an earlier one. */
export function NewerTemplate({
  piece,
  merge,
}: {
  readonly piece: PieceKey;
  readonly merge: MergeView;
}) {
  return (
    <MergeForm
      id="newer"
      piece={piece}
      merge={merge}
      from="template"
      anew
      button="Write it with the new template"
    >
      <p>
        <b>Your template has changed since this was written.</b> Your own words stay
        {merge.conflicts.length > 0 && ", and where both changed a passage you choose"}.
      </p>
    </MergeForm>
  );
}
