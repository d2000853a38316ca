import type { ReactNode } from "react";

/** The head of a page: a small line, the title, and what can be done. */
export function PageHead({
  kicker,
  title,
  children,
}: {
  readonly kicker: string;
  readonly title: string;
  readonly children?: ReactNode;
}) {
  return (
    <div className="head">
      <div>
        <p className="kicker">{kicker}</p>
        <h1>{title}</h1>
      </div>
      {children && <div className="row noprint">{children}</div>}
    </div>
  );
}
