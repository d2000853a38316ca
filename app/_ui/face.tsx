/** Eyes and mouth by how far along the scale a face stands, 0 to 100. Never angry, never disgusted. */
const LOOKS = [
  { upTo: 12, eyes: "M13 22q2.5 2 5 0M26 22q2.5 2 5 0", mouth: "M16 34q6-6 12 0" },
  { upTo: 38, mouth: "M16.5 33q5.5-3 11 0" },
  { upTo: 62, mouth: "M16.5 31.5h11" },
  { upTo: 88, mouth: "M15.5 30q6.5 5 13 0", cheeks: true },
  {
    upTo: 100,
    eyes: "M13 22.5q2.5-4 5 0M26 22.5q2.5-4 5 0",
    mouth: "M14 28.5q8 11 16 0z",
    cheeks: true,
  },
] as const;

/** A face as the lid of a tin; the word stands beside it. `value` is 0–100. */
export function Face({ value }: { readonly value: number }) {
  const look = LOOKS.find(({ upTo }) => value <= upTo) ?? LOOKS[4];
  return (
    <svg className="face" viewBox="0 0 44 44" aria-hidden="true">
      <path className="in" d="M16 8q0-5 6-5t6 5" />
      <rect className="lid" x="4" y="8" width="36" height="33" rx="14" />
      {"cheeks" in look && (
        <>
          <circle className="cheek" cx="11" cy="27.5" r="2.6" />
          <circle className="cheek" cx="33" cy="27.5" r="2.6" />
        </>
      )}
      {"eyes" in look ? (
        <path className="in" d={look.eyes} />
      ) : (
        <>
          <circle className="dot" cx="15.5" cy="21.5" r="2" />
          <circle className="dot" cx="28.5" cy="21.5" r="2" />
        </>
      )}
      <path className="in" d={look.mouth} />
    </svg>
  );
}
