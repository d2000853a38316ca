import { PATTERNS } from "#lib/catalog/index.ts";
import { DRAWINGS } from "./food-tint.ts";

/** What all trays of a page share, drawn once: the empty tin, and a pattern for each kind of food. */
export function TinDrawings() {
  return (
    <svg width="0" height="0" className="drawings" aria-hidden="true">
      <defs>
        <symbol
          id="tin"
          viewBox="-5 0 182 130"
          width="182"
          height="130"
          x="-5"
          y="0"
          overflow="visible"
        >
          <rect className="tin-latch" x="-4" y="51" width="10" height="26" rx="4" />
          <rect className="tin-latch" x="166" y="51" width="10" height="26" rx="4" />
          <rect className="tin-body" x="1.3" y="1.3" width="169.4" height="125.4" rx="19" />
          <rect className="tin-shine" x="4" y="4" width="164" height="120" rx="16.5" />
          <path className="tin-chip" d="M124 126.8q2-4.5 5-3.6t5 1.2q2 1 1 2.400z" />
        </symbol>
        {PATTERNS.map((pattern) => {
          const { width, height, path } = DRAWINGS[pattern];
          return (
            <pattern
              key={pattern}
              id={`food-${pattern}`}
              width={width}
              height={height}
              patternUnits="userSpaceOnUse"
              patternTransform="rotate(-8)"
            >
              <path d={path} />
            </pattern>
          );
        })}
      </defs>
    </svg>
  );
}
