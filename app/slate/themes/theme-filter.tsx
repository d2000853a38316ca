import Link from "next/link";
import { Icon } from "#app/_ui/icon.tsx";
import type { FindThemesInput } from "#lib/use-cases/themes/theme.input.ts";
import styles from "./themes.module.css";

/** The pool by word, by next month and by never used; plain links and a form that need no script. */
export function ThemeFilter({
  asked,
  found,
  all,
  nextMonth,
}: {
  readonly asked: FindThemesInput;
  readonly found: number;
  readonly all: number;
  readonly nextMonth: string;
}) {
  const { season, used } = asked;
  const chips = [
    [`In season in ${nextMonth}`, season, { ...asked, season: season ? undefined : "next-month" }],
    ["Never used", used, { ...asked, used: used ? undefined : "never" }],
  ] as const;
  return (
    <div className={styles.filter}>
      <form className={styles.word} action="/slate/themes#pool" role="search">
        <label htmlFor="theme-word">Name, motif or colour</label>
        <div className="row">
          <input
            className="field"
            id="theme-word"
            type="search"
            name="q"
            defaultValue={asked.q}
            key={asked.q}
            maxLength={80}
            autoComplete="off"
          />
          {season && <input type="hidden" name="season" value={season} />}
          {used && <input type="hidden" name="used" value={used} />}
          <button className="btn plain" type="submit">
            Find
          </button>
        </div>
      </form>
      <nav className="row" aria-label="Show only">
        {chips.map(([name, isOn, next]) => (
          <Link
            className={`chip ${styles.chip}`}
            key={name}
            href={themesAddress(next)}
            aria-current={isOn ? "true" : undefined}
            prefetch={false}
            scroll={false}
          >
            {isOn && <Icon name="check" />}
            {name}
          </Link>
        ))}
      </nav>
      <p className="small quiet" role="status">
        {found === all
          ? `All ${all} themes, by name.`
          : `${found} of ${all} themes${season ? ", those that have a season of their own first" : ""}.`}{" "}
        {found < all && (
          <Link href="/slate/themes" prefetch={false} scroll={false}>
            Show all
          </Link>
        )}
      </p>
    </div>
  );
}

function themesAddress({ q, season, used }: FindThemesInput): string {
  const query = new URLSearchParams({
    ...(q === "" ? {} : { q }),
    ...(season ? { season } : {}),
    ...(used ? { used } : {}),
  }).toString();
  return query === "" ? "/slate/themes" : `/slate/themes?${query}`;
}
