import "@fontsource-variable/fraunces/full.css";
import "@fontsource-variable/fraunces/full-italic.css";
import "@fontsource-variable/nunito-sans";
import "./_ui/tokens.css";
import "./_ui/parts.css";
import type { Metadata, Viewport } from "next";
import { requestContext } from "#app/_server/context.ts";
import { TinDrawings } from "#app/_ui/tin-drawings.tsx";
import { TopBar } from "#app/_ui/top-bar.client.tsx";
import { loadMasthead } from "#lib/use-cases/load-masthead.ts";

export const metadata: Metadata = {
  title: { default: "Noonbook", template: "%s · Noonbook" },
  description: "The production planner of a weekly packed-lunch series.",
};
export const viewport: Viewport = { width: "device-width", initialScale: 1 };

export default async function Layout({ children }: LayoutProps<"/">) {
  const masthead = await loadMasthead(await requestContext());
  return (
    <html lang="en">
      <body>
        <TinDrawings />
        <a className="skip" href="#content">
          Skip to the page
        </a>
        <header className="noprint">
          <TopBar {...masthead} />
          <div className="perf" />
        </header>
        <main className="wrap" id="content">
          {children}
        </main>
      </body>
    </html>
  );
}
