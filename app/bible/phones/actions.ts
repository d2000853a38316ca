"use server";

import { refresh } from "next/cache";
import { z } from "zod";
import { invalid, refused, saved, type FormState } from "#app/_forms/form-state.ts";
import { requestContext } from "#app/_server/context.ts";
import { sendOut } from "#lib/use-cases/let-in.ts";
import { setPassphrase } from "#lib/use-cases/set-passphrase.ts";
import { SetPassphraseInput } from "#lib/use-cases/set-passphrase.input.ts";

const SendOutInput = z.object({
  id: z
    .string()
    .regex(/^[0-9a-f]{64}$/)
    .optional(),
});

/** Public endpoint: trusts nothing it is handed. */
export async function setPassphraseAction(input: unknown): Promise<FormState> {
  const parsed = SetPassphraseInput.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  const { current, next } = parsed.data;
  const outcome = await setPassphrase(await requestContext(), { current, next });
  if (!outcome.ok) {
    return { kind: "invalid", fields: { current: "That is not the passphrase that holds now." } };
  }
  refresh();
  return saved;
}

/** Public endpoint: trusts nothing it is handed. */
export async function sendOutAction(input: unknown): Promise<FormState> {
  const parsed = SendOutInput.safeParse(input);
  if (!parsed.success) return refused("Reload the page: that device is not listed any more.");
  const { id } = parsed.data;
  await sendOut(await requestContext(), id === undefined ? {} : { id });
  refresh();
  return saved;
}
