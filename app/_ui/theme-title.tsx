/** A theme's name in soft italic, one drawn stroke beneath. */
export function ThemeTitle({
  name,
  as: Heading = "h2",
}: {
  readonly name: string;
  readonly as?: "h1" | "h2" | "p";
}) {
  return (
    <Heading className="lettered">
      {name}
      <svg viewBox="0 0 200 8" preserveAspectRatio="none" aria-hidden="true">
        <path
          d="M1 6Q40 1 90 3.5T199 2"
          fill="none"
          stroke="currentColor"
          strokeWidth="2"
          strokeLinecap="round"
        />
      </svg>
    </Heading>
  );
}
