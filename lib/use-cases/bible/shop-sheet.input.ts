import { z } from "zod";
import { linesField, nameField, RowMark, textField, TickedWeekdays } from "./typed-fields.input.ts";

/** A shop as its form holds it. */
export const ShopInput = z.object({
  ...RowMark,
  name: nameField("Write the shop's name."),
  days: TickedWeekdays,
  hours: textField(60),
  aisles: linesField(60, 60),
  note: textField(1000),
});
export type ShopInput = z.infer<typeof ShopInput>;

/** A shop that comes one place nearer in the order of distance, or one farther. */
export const MoveShopInput = z.object({
  id: z.string().min(1).max(60),
  way: z.enum(["nearer", "farther"]),
});
export type MoveShopInput = z.infer<typeof MoveShopInput>;
