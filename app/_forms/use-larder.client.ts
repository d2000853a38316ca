"use client";

import { useEffect, useState } from "react";
import { z } from "zod";

/** What the composer chooses from; checked, since it comes over the network. */
const Larder = z.object({
  foods: z.array(
    z.object({
      id: z.string(),
      name: z.string(),
      aliases: z.array(z.string()),
      part: z.string(),
      amount: z.number(),
      unit: z.string(),
      sliceable: z.boolean(),
    }),
  ),
  tricks: z.array(z.object({ id: z.string(), name: z.string(), needsSliceable: z.boolean() })),
});
export type Larder = z.infer<typeof Larder>;

export type LarderState =
  | { readonly kind: "waiting" }
  | { readonly kind: "here"; readonly larder: Larder }
  | { readonly kind: "failed"; readonly retry: () => void };

// One request serves the five lunches of a page.
let asked: Promise<Larder> | undefined;

/** The foods and tricks, asked for once a page; refused when they did not come. */
export function openLarder(): Promise<Larder> {
  asked ??= askForLarder().catch((problem: unknown) => {
    asked = undefined;
    throw problem;
  });
  return asked;
}

async function askForLarder(): Promise<Larder> {
  const response = await fetch("/slate/choices");
  if (!response.ok) throw new Error(`The Larder answered ${response.status}`);
  return Larder.parse(await response.json());
}

/** The foods and tricks, once they are here. */
export function useLarder(): LarderState {
  const [state, setState] = useState<LarderState>({ kind: "waiting" });
  const [turn, setTurn] = useState(0);
  useEffect(() => {
    let isShown = true;
    openLarder().then(
      (larder) => {
        if (isShown) setState({ kind: "here", larder });
      },
      () => {
        const retry = (): void => {
          setState({ kind: "waiting" });
          setTurn((count) => count + 1);
        };
        if (isShown) setState({ kind: "failed", retry });
      },
    );
    return () => {
      isShown = false;
    };
  }, [turn]);
  return state;
}
