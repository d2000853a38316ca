import styles from "./one-page.module.css";

/** A clock time of the day with what happens then; the key one is the one not to miss. */
export type Clock = { readonly name: string; readonly value: string; readonly isKey?: boolean };

/** The clock times of a day in one band, in the order given. */
export function Clocks({ clocks }: { readonly clocks: readonly Clock[] }) {
  return (
    <dl className={styles.clocks}>
      {clocks.map(({ name, value, isKey = false }) => (
        <div key={name} className={isKey ? styles.key : undefined}>
          <dt>{name}</dt>
          <dd>
            <time>{value}</time>
          </dd>
        </div>
      ))}
    </dl>
  );
}
