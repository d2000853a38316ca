import { Icon } from "./icon.tsx";

/** A paper tag on its pin; a broken rule has the stop sign instead. */
export function PaperTag({
  text,
  isBroken = false,
}: {
  readonly text: string;
  readonly isBroken?: boolean;
}) {
  return (
    <span className="pinned">
      <span className={isBroken ? "pin broken" : "pin"}>
        {isBroken && <Icon name="stop" />}
        {text}
      </span>
    </span>
  );
}
