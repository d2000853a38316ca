"use client";

import { useRouter } from "next/navigation";
import { useId, useState, type FormEvent } from "react";
import { Field } from "#app/_forms/field.client.tsx";
import type { FormState } from "#app/_forms/form-state.ts";
import { editEpisodeAction, moveEpisodeAction, removeEpisodeAction } from "./actions.ts";
import styles from "./slate.module.css";

/** Theme, title, surprise and notes of an episode; its week; and taking it off the slate. */
export function EpisodeForm({
  episode,
  monday,
  themes,
}: {
  readonly episode: {
    readonly id: string;
    readonly revision: number;
    readonly themeId: string | null;
    readonly workingTitle: string;
    readonly notes: string;
    readonly surprise: string;
    readonly revealOn: string;
  };
  readonly monday: string;
  readonly themes: readonly { readonly id: string; readonly name: string }[];
}) {
  const id = useId();
  const router = useRouter();
  const [problems, setProblems] = useState<Readonly<Record<string, string>>>({});
  const [status, setStatus] = useState<string>();

  const told = (state: FormState | undefined, done: string): void => {
    setProblems(state?.kind === "invalid" ? state.fields : {});
    if (!state) setStatus("Noonbook did not answer. What you typed is still here: try again.");
    else if (state.kind === "refused") setStatus(state.message);
    else if (state.kind === "invalid") setStatus("Look at the marked fields.");
    else if (state.href) router.push(state.href);
    else setStatus(done);
  };
  const save = async (event: FormEvent<HTMLFormElement>): Promise<void> => {
    event.preventDefault();
    const typed = Object.fromEntries(new FormData(event.currentTarget));
    const { id: episodeId, revision } = episode;
    told(
      await editEpisodeAction({ ...typed, episodeId, revision }).catch(() => undefined),
      "Saved.",
    );
  };
  const move = async (event: FormEvent<HTMLFormElement>): Promise<void> => {
    event.preventDefault();
    const typed = Object.fromEntries(new FormData(event.currentTarget));
    told(
      await moveEpisodeAction({ ...typed, episodeId: episode.id }).catch(() => undefined),
      "Moved.",
    );
  };
  const remove = async (): Promise<void> => {
    told(await removeEpisodeAction({ episodeId: episode.id }).catch(() => undefined), "Removed.");
  };

  return (
    <details className="sheet">
      <summary>Theme, title, surprise, week</summary>
      <form className={styles.rows} onSubmit={(event) => void save(event)} noValidate>
        <div>
          <label htmlFor={`${id}-theme`}>Theme</label>
          <select
            className="field"
            id={`${id}-theme`}
            name="themeId"
            defaultValue={episode.themeId ?? ""}
          >
            <option value="">No theme</option>
            {themes.map((theme) => (
              <option key={theme.id} value={theme.id}>
                {theme.name}
              </option>
            ))}
          </select>
        </div>
        <Field
          label="Working title"
          name="title"
          defaultValue={episode.workingTitle}
          error={problems["title"]}
        />
        <Field
          label="Surprise, kept out of everything public until its day"
          name="surprise"
          defaultValue={episode.surprise}
          error={problems["surprise"]}
        />
        <Field
          label="May be told from"
          name="revealOn"
          type="date"
          defaultValue={episode.revealOn}
          error={problems["revealOn"]}
        />
        <div>
          <label htmlFor={`${id}-notes`}>Notes</label>
          <textarea
            className="field"
            id={`${id}-notes`}
            name="notes"
            rows={3}
            defaultValue={episode.notes}
          />
          {problems["notes"] && <p className="rule-error">{problems["notes"]}</p>}
        </div>
        <div className="row">
          <button className="btn" type="submit">
            Save the words
          </button>
          <span role="status">{status}</span>
        </div>
      </form>
      <form className="row" onSubmit={(event) => void move(event)} noValidate>
        <Field
          label="Move to the week of Monday"
          name="monday"
          type="date"
          defaultValue={monday}
          hint="An episode that stands there changes places with this one."
          error={problems["monday"]}
        />
        <button className="btn plain" type="submit">
          Move
        </button>
        <button className="btn plain" type="button" onClick={() => void remove()}>
          Take off the slate
        </button>
      </form>
    </details>
  );
}
