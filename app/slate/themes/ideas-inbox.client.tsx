"use client";

import Link from "next/link";
import { useState, type FormEvent } from "react";
import { Field } from "#app/_forms/field.client.tsx";
import type { FormState } from "#app/_forms/form-state.ts";
import bible from "#app/bible/bible.module.css";
import type { IdeaView } from "#lib/use-cases/themes/load-themes.ts";
import { addIdeaAction, settleIdeaAction } from "./actions.ts";

/** Ideas to write down, and what becomes of each. */
export function IdeasInbox({ ideas }: { readonly ideas: readonly IdeaView[] }) {
  const [problem, setProblem] = useState<string>();
  const add = async (event: FormEvent<HTMLFormElement>): Promise<void> => {
    event.preventDefault();
    const form = event.currentTarget;
    const state = await addIdeaAction({ text: new FormData(form).get("text") }).catch(
      () => undefined,
    );
    setProblem(problemOf(state));
    if (state?.kind === "saved") form.reset();
  };
  const open = ideas.filter((idea) => idea.state === "inbox");
  const settled = ideas.filter((idea) => idea.state !== "inbox");
  return (
    <>
      <form className={bible.form} onSubmit={(event) => void add(event)} noValidate>
        <Field label="What somebody wished for" name="text" error={problem} autoComplete="off" />
        <div className="row">
          <button className="btn plain" type="submit">
            Put it into the inbox
          </button>
        </div>
      </form>
      {open.length === 0 && <p className="quiet">The inbox is empty.</p>}
      <ul className={bible.rows}>
        {open.map((idea) => (
          <OpenIdea key={idea.id} idea={idea} />
        ))}
      </ul>
      {settled.length > 0 && (
        <details>
          <summary>Settled before: {settled.length}</summary>
          <ul className={bible.rows}>
            {settled.map((idea) => (
              <li key={idea.id}>
                <div>
                  {idea.text} <Became idea={idea} />
                </div>
              </li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}

const STATE_WORDS: Readonly<Record<string, string>> = {
  theme: "became a theme",
  food: "became a wished food",
  promise: "became a promise",
  passed: "passed over",
};

/** What became of an idea, leading to the sheet that is to be filled in. */
function Became({ idea: { state, becameId } }: { readonly idea: IdeaView }) {
  const words = STATE_WORDS[state];
  const room = becameId === null ? undefined : ROOMS[state];
  return room === undefined ? (
    <span className="small quiet">({words})</span>
  ) : (
    <Link className="small" href={`${room}/${becameId ?? ""}`} prefetch={false}>
      {words}
    </Link>
  );
}

const ROOMS: Readonly<Record<string, string>> = { theme: "/slate/themes", food: "/larder" };

function OpenIdea({ idea }: { readonly idea: IdeaView }) {
  const [name, setName] = useState("");
  const [problem, setProblem] = useState<string>();
  const settle = async (into: "theme" | "food" | "passed"): Promise<void> => {
    const state = await settleIdeaAction({ id: idea.id, into, name }).catch(() => undefined);
    setProblem(problemOf(state));
  };
  return (
    <li>
      <div>
        {idea.text} <span className="small quiet">{idea.receivedOn}</span>
      </div>
      <Field
        label="Its name as a theme or a food"
        value={name}
        error={problem}
        onChange={(event) => {
          setName(event.target.value);
        }}
      />
      <div className="row">
        <button className="btn plain slim" type="button" onClick={() => void settle("theme")}>
          Make it a theme
        </button>
        <button className="btn plain slim" type="button" onClick={() => void settle("food")}>
          Wish for the food
        </button>
        <button className="btn plain slim" type="button" onClick={() => void settle("passed")}>
          Pass it over
        </button>
      </div>
    </li>
  );
}

function problemOf(state: FormState | undefined): string | undefined {
  if (!state) return "Noonbook did not answer. Try again.";
  if (state.kind === "saved") return undefined;
  return state.kind === "refused" ? state.message : Object.values(state.fields)[0];
}
