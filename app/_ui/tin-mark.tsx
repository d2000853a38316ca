/** Noonbook's mark: a lunch tin seen from above. */
export function TinMark() {
  return (
    <svg width="34" height="28" viewBox="0 0 34 28" aria-hidden="true">
      <path d="M11 6q0-4.5 6-4.5T23 6" fill="none" stroke="currentColor" strokeWidth="2.2" />
      <rect
        x="1.5"
        y="6"
        width="31"
        height="20"
        rx="7"
        fill="none"
        stroke="currentColor"
        strokeWidth="2.4"
      />
      <rect x="5.5" y="10" width="11" height="12" rx="3.5" fill="currentColor" />
      <rect x="19" y="10" width="9.5" height="5" rx="2.2" fill="currentColor" />
      <rect x="19" y="17" width="9.5" height="5" rx="2.2" fill="currentColor" />
    </svg>
  );
}
