const DOOR = "/let-in";

/** Where the door is found by someone who asked for a page; it remembers which. */
export function doorFor(asked: string): string {
  const back = ownPath(asked);
  return back === "/" ? DOOR : `${DOOR}?to=${encodeURIComponent(back)}`;
}

/** Where someone goes who was let in: the page they asked for, if it is a path of ours. */
export function wayBack(doorUrl: string): string {
  return ownPath(new URL(doorUrl, "http://door").searchParams.get("to") ?? "/");
}

/** A path that cannot lead to another host, whatever a browser makes of its first letters; else the front page. */
function ownPath(asked: string): string {
  return /^\/(?![/\\])[\x21-\x7e]*$/.test(asked) && !asked.startsWith(DOOR) ? asked : "/";
}
