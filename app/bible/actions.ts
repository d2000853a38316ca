"use server";

import type { FormState } from "#app/_forms/form-state.ts";
import { retireChild, saveChild } from "#lib/use-cases/bible/child-sheet.ts";
import { ChildInput, RetireInput } from "#lib/use-cases/bible/child-sheet.input.ts";
import { removeRule, saveRule } from "#lib/use-cases/bible/rule-sheet.ts";
import { RemoveRuleInput, RuleInput } from "#lib/use-cases/bible/rule-sheet.input.ts";
import {
  saveDaysSheet,
  saveLimitsSheet,
  savePublicSheet,
  saveSeriesSheet,
} from "#lib/use-cases/bible/settings-sheets.ts";
import {
  DaysInput,
  LimitsInput,
  PublicInput,
  SeriesInput,
} from "#lib/use-cases/bible/settings-sheets.input.ts";
import { moveShop, retireShop, saveShop } from "#lib/use-cases/bible/shop-sheet.ts";
import { MoveShopInput, ShopInput } from "#lib/use-cases/bible/shop-sheet.input.ts";
import { answerSheet } from "./answer.ts";

/** Public endpoint, like all below: trusts nothing it is handed. */
export async function saveChildAction(input: unknown): Promise<FormState> {
  return answerSheet(ChildInput, input, saveChild, "/bible#children");
}

export async function retireChildAction(input: unknown): Promise<FormState> {
  return answerSheet(RetireInput, input, retireChild);
}

export async function saveRuleAction(input: unknown): Promise<FormState> {
  return answerSheet(RuleInput, input, saveRule, "/bible#rules");
}

export async function removeRuleAction(input: unknown): Promise<FormState> {
  return answerSheet(RemoveRuleInput, input, removeRule, "/bible#rules");
}

export async function saveShopAction(input: unknown): Promise<FormState> {
  return answerSheet(ShopInput, input, saveShop, "/bible#shops");
}

export async function moveShopAction(input: unknown): Promise<FormState> {
  return answerSheet(MoveShopInput, input, moveShop);
}

export async function retireShopAction(input: unknown): Promise<FormState> {
  return answerSheet(RetireInput, input, retireShop);
}

export async function saveSeriesAction(input: unknown): Promise<FormState> {
  return answerSheet(SeriesInput, input, saveSeriesSheet, "/bible#series");
}

export async function saveDaysAction(input: unknown): Promise<FormState> {
  return answerSheet(DaysInput, input, saveDaysSheet, "/bible#days");
}

export async function saveLimitsAction(input: unknown): Promise<FormState> {
  return answerSheet(LimitsInput, input, saveLimitsSheet, "/bible#limits");
}

export async function savePublicAction(input: unknown): Promise<FormState> {
  return answerSheet(PublicInput, input, savePublicSheet, "/bible#public");
}
