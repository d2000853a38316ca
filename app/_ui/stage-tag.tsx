import { Icon, type IconName } from "./icon.tsx";

const ICONS = {
  pencilled: "pencil",
  locked: "lock",
  shot: "camera",
  published: "sent",
} as const satisfies Record<string, IconName>;
export type Stage = keyof typeof ICONS;

/** The stage of an episode: told by border, sign and word. */
export function StageTag({ stage }: { readonly stage: Stage }) {
  return (
    <span className={`tag ${stage}`}>
      <Icon name={ICONS[stage]} />
      {stage}
    </span>
  );
}
