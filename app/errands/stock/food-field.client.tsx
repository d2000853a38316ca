"use client";

import { useId, type ComponentProps } from "react";
import { Field } from "#app/_forms/field.client.tsx";
import { useLarder } from "#app/_forms/use-larder.client.ts";

/** A food of the Larder, typed with suggestions. */
export function FoodField(props: ComponentProps<typeof Field>) {
  const id = useId();
  const larder = useLarder();
  const foods = larder.kind === "here" ? larder.larder.foods : [];
  return (
    <>
      <Field {...props} list={id} />
      <datalist id={id}>
        {foods.map((food) => (
          <option key={food.id} value={food.name} />
        ))}
      </datalist>
    </>
  );
}
