"use client";

/** Opens the browser's print dialogue. */
export function PrintButton({ label }: { readonly label: string }) {
  return (
    <button
      className="btn"
      type="button"
      onClick={() => {
        window.print();
      }}
    >
      {label}
    </button>
  );
}
