const PATHS = {
  stop: "M5 1h6l4 4v6l-4 4H5l-4-4V5zM8 4v5M8 11.5v.5",
  pencil: "M2 14l1-4 8-8 3 3-8 8zM9 4l3 3",
  lock: "M3 7h10v8H3zM5 7V5a3 3 0 0 1 6 0v2",
  camera: "M2 4h12v9H2zM2 7h12M6 4V2h4v2",
  sent: "M2 8l12-6-4 12-3-5z",
  check: "M3 8.5l3.5 3.5L13 4.5",
  eye: "M1 8q7-9 14 0q-7 9-14 0zM8 6.5a1.5 1.5 0 1 0 .01 0",
  clock: "M8 1.5a6.5 6.5 0 1 0 .01 0M8 4v4l3 2",
  moon: "M12 10A6 6 0 0 1 6 3a5.500 5.500 0 1 0 6 7z",
  half: "M8 2a6 6 0 1 0 .01 0M8 2v12",
  wave: "M2 9q3-6 6 0t6 0",
  ring: "M8 2a6 6 0 1 0 .01 0",
  plus: "M8 2v12M2 8h12",
  cross: "M3 3l10 10M13 3L3 13",
  search: "M7 2a5 5 0 1 0 .01 0M11 11l4 4",
} as const;

export type IconName = keyof typeof PATHS;

/** A small drawn sign; always beside a word, so it says nothing of its own to a screen reader. */
export function Icon({ name }: { readonly name: IconName }) {
  return (
    <svg className="ico" viewBox="0 0 16 16" aria-hidden="true">
      <path
        d={PATHS[name]}
        fill="none"
        stroke="currentColor"
        strokeWidth="1.8"
        strokeLinecap="round"
        strokeLinejoin="round"
      />
    </svg>
  );
}
