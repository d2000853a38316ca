"use client";

import { useRouter } from "next/navigation";
import { useId, useState, type FormEvent } from "react";
import { ProblemLine } from "#app/_forms/problem-line.tsx";
import { pencilWeekAction } from "./actions.ts";

/** Pencils a theme, or a title of the user's own, into an empty week. */
export function PencilForm({
  monday,
  themes,
}: {
  readonly monday: string;
  readonly themes: readonly { readonly id: string; readonly name: string }[];
}) {
  const router = useRouter();
  const id = useId();
  const [problem, setProblem] = useState<string>();
  const [isSaving, setSaving] = useState(false);

  const save = async (event: FormEvent<HTMLFormElement>): Promise<void> => {
    event.preventDefault();
    const typed = Object.fromEntries(new FormData(event.currentTarget));
    setSaving(true);
    const state = await pencilWeekAction({ monday, ...typed }).catch(() => undefined);
    setSaving(false);
    if (state?.kind === "saved") router.push(state.href ?? "/slate");
    else if (state?.kind === "invalid") setProblem(Object.values(state.fields)[0]);
    else setProblem(state?.message ?? "Noonbook did not answer. Try again.");
  };

  return (
    <form className="row" onSubmit={(event) => void save(event)}>
      <div>
        <label htmlFor={`${id}-theme`}>Theme in season</label>
        <select className="field" id={`${id}-theme`} name="themeId" defaultValue="">
          <option value="">No theme yet</option>
          {themes.map((theme) => (
            <option key={theme.id} value={theme.id}>
              {theme.name}
            </option>
          ))}
        </select>
      </div>
      <div>
        <label htmlFor={`${id}-title`}>or a working title</label>
        <input className="field" id={`${id}-title`} name="title" maxLength={200} />
      </div>
      <button className="btn" type="submit" disabled={isSaving} style={{ alignSelf: "end" }}>
        {isSaving ? "Pencilling …" : "Pencil it in"}
      </button>
      <ProblemLine problem={problem} />
    </form>
  );
}
