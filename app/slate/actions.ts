"use server";

import { refresh } from "next/cache";
import { invalid, refused, saved, type FormState } from "#app/_forms/form-state.ts";
import { requestContext } from "#app/_server/context.ts";
import { photosFolder } from "#app/_server/places.ts";
import { describeLockProblem, lockEpisode, LockEpisodeInput } from "#lib/use-cases/lock-episode.ts";
import { PencilWeekInput } from "#lib/use-cases/pencil-week.input.ts";
import { describePencilProblem, pencilWeek } from "#lib/use-cases/pencil-week.ts";
import { SaveLunchInput } from "#lib/use-cases/save-lunch.input.ts";
import { describeSaveLunchProblem, saveLunch, type SavedLunch } from "#lib/use-cases/save-lunch.ts";
import {
  describeEpisodeProblem,
  editEpisode,
  EditEpisodeInput,
  moveEpisode,
  MoveEpisodeInput,
  removeEpisode,
  RemoveEpisodeInput,
} from "#lib/use-cases/edit-episode.ts";
import {
  describeSwapLunchesProblem,
  swapLunches,
  SwapLunchesInput,
} from "#lib/use-cases/swap-lunches.ts";
import { clearingPhotoFiles } from "#lib/use-cases/photos/photo-files.ts";
import { describeUndoProblem, undoSlate } from "#lib/use-cases/undo-slate.ts";

/** Public endpoint: trusts nothing it is handed. */
export async function pencilWeekAction(input: unknown): Promise<FormState> {
  const parsed = PencilWeekInput.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  const outcome = await pencilWeek(await requestContext(), parsed.data);
  if (!outcome.ok) return refused(describePencilProblem(outcome.problem));
  return { kind: "saved", href: `/slate/week/${parsed.data.monday}` };
}

/** Public endpoint: trusts nothing it is handed. */
export async function lockEpisodeAction(input: unknown): Promise<FormState> {
  const parsed = LockEpisodeInput.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  const outcome = await lockEpisode(await requestContext(), parsed.data);
  if (!outcome.ok) return refused(describeLockProblem(outcome.problem));
  refresh();
  return saved;
}

/** Public endpoint: trusts nothing it is handed. */
export async function saveLunchAction(
  input: unknown,
): Promise<Exclude<FormState, { kind: "saved" }> | ({ readonly kind: "saved" } & SavedLunch)> {
  const parsed = SaveLunchInput.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  const outcome = await saveLunch(await requestContext(), parsed.data);
  if (!outcome.ok) return refused(describeSaveLunchProblem(outcome.problem));
  refresh();
  return { kind: "saved", ...outcome.value };
}

/** Public endpoint: trusts nothing it is handed. */
export async function editEpisodeAction(input: unknown): Promise<FormState> {
  const parsed = EditEpisodeInput.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  const outcome = await editEpisode(await requestContext(), parsed.data);
  if (!outcome.ok) return refused(describeEpisodeProblem(outcome.problem));
  refresh();
  return saved;
}

/** Public endpoint: trusts nothing it is handed. */
export async function moveEpisodeAction(input: unknown): Promise<FormState> {
  const parsed = MoveEpisodeInput.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  const context = await requestContext();
  const outcome = await clearingPhotoFiles(context, photosFolder(), () =>
    moveEpisode(context, parsed.data),
  );
  if (!outcome.ok) return refused(describeEpisodeProblem(outcome.problem));
  return { kind: "saved", href: `/slate/week/${parsed.data.monday}` };
}

/** Public endpoint: trusts nothing it is handed. */
export async function removeEpisodeAction(input: unknown): Promise<FormState> {
  const parsed = RemoveEpisodeInput.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  const context = await requestContext();
  const outcome = await clearingPhotoFiles(context, photosFolder(), () =>
    removeEpisode(context, parsed.data.episodeId),
  );
  if (!outcome.ok) return refused(describeEpisodeProblem(outcome.problem));
  return { kind: "saved", href: "/slate" };
}

/** Public endpoint: trusts nothing it is handed. */
export async function swapLunchesAction(input: unknown): Promise<FormState> {
  const parsed = SwapLunchesInput.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  const outcome = await swapLunches(await requestContext(), parsed.data);
  if (!outcome.ok) return refused(describeSwapLunchesProblem(outcome.problem));
  refresh();
  return saved;
}

/** Takes back the slate's last change; takes no input. */
export async function undoSlateAction(): Promise<FormState> {
  const context = await requestContext();
  const outcome = await clearingPhotoFiles(context, photosFolder(), () => undoSlate(context));
  if (!outcome.ok) return refused(describeUndoProblem(outcome.problem));
  refresh();
  return saved;
}
