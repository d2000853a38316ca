"use client";

import { useRouter } from "next/navigation";
import { useState } from "react";
import { forgetVerdictPages } from "#app/verdicts/forget-pages.client.ts";
import { loadDemoAction } from "./actions.ts";

/** Loads the invented series and opens its slate. */
export function DemoDoor() {
  const router = useRouter();
  const [status, setStatus] = useState<string>();
  const open = async (): Promise<void> => {
    setStatus("Setting the table …");
    const state = await loadDemoAction().catch(() => undefined);
    if (state?.kind === "saved") {
      await forgetVerdictPages();
      router.push(state.href ?? "/slate");
      router.refresh();
    } else {
      setStatus(state?.kind === "refused" ? state.message : "Noonbook did not answer. Try again.");
    }
  };
  return (
    <div className="row">
      <button className="btn plain" type="button" onClick={() => void open()}>
        Open the demo
      </button>
      <span role="status">{status}</span>
    </div>
  );
}
