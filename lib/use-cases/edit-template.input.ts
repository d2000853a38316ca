import { z } from "zod";
import { DRAFT_KINDS, TEMPLATE_MOST } from "#lib/drafts/index.ts";

/** A template as the user has it. */
export const TemplateInput = z.object({
  kind: z.enum(DRAFT_KINDS),
  body: z
    .string()
    .min(1, { error: "An empty template writes nothing. Bring an earlier one back instead." })
    .max(TEMPLATE_MOST, { error: `Keep it under ${TEMPLATE_MOST} letters.` }),
});
export type TemplateInput = z.infer<typeof TemplateInput>;

/** A template to be kept; the version the user started from. */
export const SaveTemplateInput = TemplateInput.extend({ version: z.number().int().min(0) });
export type SaveTemplateInput = z.infer<typeof SaveTemplateInput>;
