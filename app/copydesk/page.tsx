import Link from "next/link";
import { redirect } from "next/navigation";
import { requestContext } from "#app/_server/context.ts";
import { PageHead } from "#app/_ui/page-head.tsx";
import { currentEpisode } from "#lib/use-cases/load-copy-desk.ts";

export const metadata = { title: "Copy desk" };

/** The copy desk opens on the episode that is worked on now. */
export default async function CopyDeskDoor() {
  const monday = await currentEpisode(await requestContext());
  if (monday) redirect(`/copydesk/${monday}`);
  return (
    <>
      <PageHead kicker="Copy desk" title="Nothing to write of yet" />
      <section className="sheet">
        <p>Texts are written from the records of an episode. Pencil the first one in.</p>
        <p>
          <Link className="btn" href="/slate">
            Open the slate
          </Link>
        </p>
      </section>
    </>
  );
}
