import Link from "next/link";
import type { ReactNode } from "react";
import styles from "./bible.module.css";

/** One sheet of the bible: its heading, where it is changed, what it holds. */
export function SheetFrame({
  id,
  title,
  href,
  link,
  isWide = false,
  children,
}: {
  readonly id: string;
  readonly title: string;
  readonly href: string;
  readonly link: string;
  readonly isWide?: boolean;
  readonly children: ReactNode;
}) {
  return (
    <section
      className={isWide ? `sheet ${styles.wide ?? ""}` : "sheet"}
      id={id}
      aria-labelledby={`${id}-title`}
    >
      <div className={styles.sheetHead}>
        <h2 id={`${id}-title`}>{title}</h2>
        <Link className="btn plain slim noprint" href={href} prefetch={false}>
          {link}
        </Link>
      </div>
      {children}
    </section>
  );
}
