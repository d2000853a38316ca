import Link from "next/link";
import { Day, mediumDay } from "#lib/calendar/index.ts";
import { loadBoard, type BoardView } from "#lib/use-cases/load-board.ts";
import { requestContext } from "#app/_server/context.ts";
import { Icon } from "#app/_ui/icon.tsx";
import { PageHead } from "#app/_ui/page-head.tsx";
import { CopyPlain } from "../copy-button.client.tsx";
import styles from "../copydesk.module.css";
import { KeepPost } from "./keep-post.client.tsx";

export const metadata = { title: "Board posts" };

/** A post for the community board, from any lunches that were packed. */
export default async function Board({ searchParams }: PageProps<"/copydesk/board">) {
  const asked = await searchParams;
  const one = (name: string): string | undefined => {
    const value = asked[name];
    return typeof value === "string" && value !== "" ? value : undefined;
  };
  const dayIn = (name: string): Day | undefined => Day.safeParse(one(name)).data;
  const chosen = asked["lunch"];
  const ask = {
    ...{ foodId: one("food"), themeId: one("theme"), from: dayIn("from"), to: dayIn("to") },
    chosen: typeof chosen === "string" ? [chosen] : (chosen ?? []),
  };
  const view = await loadBoard(await requestContext(), ask);
  const findings = view.checks.flatMap((check) => check.findings);
  return (
    <>
      <PageHead kicker="Copy desk" title="Board posts">
        <Link className="btn plain" href="/copydesk">
          Back to the pack
        </Link>
      </PageHead>
      <div className={styles.halves}>
        <form className={`sheet ${styles.ask}`} action="/copydesk/board">
          <h2>What about?</h2>
          <Choice
            name="food"
            label="A food"
            empty="any food"
            value={ask.foodId}
            options={view.foods}
          />
          <Choice
            name="theme"
            label="A theme"
            empty="any theme"
            value={ask.themeId}
            options={view.themes}
          />
          <div className={styles.span}>
            <div>
              <label htmlFor="from">From</label>
              <input className="field" id="from" name="from" type="date" defaultValue={ask.from} />
            </div>
            <div>
              <label htmlFor="to">To</label>
              <input className="field" id="to" name="to" type="date" defaultValue={ask.to} />
            </div>
          </div>
          <button className="btn" type="submit">
            Find lunches
          </button>
        </form>
        <section className="sheet" aria-label="The post">
          <h2>The post</h2>
          {view.text === "" ? (
            <p className="quiet">No packed lunch fits. Ask for less.</p>
          ) : (
            <>
              <p className={styles.lights}>
                <Icon name={view.open > 0 ? "stop" : "check"} />
                {view.open > 0
                  ? `${view.open} to mend`
                  : `${view.checks.length} guards, nothing open`}
              </p>
              {findings.map((finding) => (
                <p className="rule-error" key={finding.key}>
                  {finding.text}
                </p>
              ))}
              <p className={styles.preview}>{view.text}</p>
              <div className={`row ${styles.after}`}>
                {view.open === 0 && <CopyPlain name="the post" text={view.text} />}
                <KeepPost choice={view.choice} />
              </div>
            </>
          )}
        </section>
      </div>
      {view.posts.length > 0 && <Posts posts={view.posts} />}
      {view.lunches.length > 0 && <Lunches view={view} ask={ask} />}
    </>
  );
}

/** The posts that are kept, with how each stands. */
function Posts({ posts }: { readonly posts: BoardView["posts"] }) {
  return (
    <section className={`sheet ${styles.chosen}`} aria-label="Kept posts">
      <h2>Kept posts</h2>
      <ul className={styles.promises}>
        {posts.map((post) => (
          <li key={post.id}>
            <Link className={styles.post} href={`/copydesk/board/${post.id}`} prefetch={false}>
              {post.title}
            </Link>
            <p className={styles.lights}>
              <Icon name={post.open > 0 ? "pencil" : "check"} />
              {post.publishedOn === null
                ? "Not published"
                : `Published on ${mediumDay(post.publishedOn)}`}
              {post.isStale
                ? "; stale: its records changed"
                : post.open > 0
                  ? `; ${post.open} to mend`
                  : ""}
            </p>
          </li>
        ))}
      </ul>
    </section>
  );
}

function Choice({
  name,
  label,
  empty,
  value,
  options,
}: {
  readonly name: string;
  readonly label: string;
  readonly empty: string;
  readonly value: string | undefined;
  readonly options: readonly { readonly id: string; readonly name: string }[];
}) {
  return (
    <div>
      <label htmlFor={name}>{label}</label>
      <select className="field" id={name} name={name} defaultValue={value ?? ""}>
        <option value="">{empty}</option>
        {options.map((option) => (
          <option key={option.id} value={option.id}>
            {option.name}
          </option>
        ))}
      </select>
    </div>
  );
}

function Lunches({
  view,
  ask,
}: {
  readonly view: BoardView;
  readonly ask: {
    readonly foodId: string | undefined;
    readonly themeId: string | undefined;
    readonly from: Day | undefined;
    readonly to: Day | undefined;
  };
}) {
  return (
    <form className={`sheet ${styles.chosen}`} action="/copydesk/board">
      <h2>Which lunches</h2>
      {ask.foodId !== undefined && <input type="hidden" name="food" value={ask.foodId} />}
      {ask.themeId !== undefined && <input type="hidden" name="theme" value={ask.themeId} />}
      {ask.from !== undefined && <input type="hidden" name="from" value={ask.from} />}
      {ask.to !== undefined && <input type="hidden" name="to" value={ask.to} />}
      <ul className={styles.promises}>
        {view.lunches.map((lunch) => (
          <li key={lunch.id}>
            <label className={styles.choice}>
              <input
                type="checkbox"
                name="lunch"
                value={lunch.id}
                defaultChecked={lunch.isChosen}
              />
              <span>
                <b>
                  {mediumDay(lunch.date)}, {lunch.title}:
                </b>{" "}
                {lunch.foods.join(", ")}
              </span>
            </label>
          </li>
        ))}
      </ul>
      <button className="btn" type="submit">
        Write of these
      </button>
    </form>
  );
}
