import { expect, test } from "vitest";
import { openPage } from "#tests/support/browser.ts";
import { withDemo } from "#tests/support/demo.ts";

const demo = withDemo();

/** Bytes of script that a page brings into the browser, as sent over the line and unpacked. */
async function scriptOf(address: string): Promise<{ sent: number; unpacked: number }> {
  const { page } = await openPage(demo.browser, { width: 390 });
  const sizes: Promise<{ sent: number; unpacked: number }>[] = [];
  page.on("requestfinished", (request) => {
    if (request.resourceType() !== "script") return;
    sizes.push(
      Promise.all([request.sizes(), request.response().then((answer) => answer?.body())]).then(
        ([{ responseBodySize: sent }, body]) => ({ sent, unpacked: body?.length ?? 0 }),
      ),
    );
  });
  await page.goto(demo.url + address, { waitUntil: "networkidle" });
  const all = await Promise.all(sizes);
  await page.context().close();
  return all.reduce(
    (sum, one) => ({ sent: sum.sent + one.sent, unpacked: sum.unpacked + one.unpacked }),
    { sent: 0, unpacked: 0 },
  );
}

test("the Verdicts page brings at most 1.3 times the script of an empty page of the app", async () => {
  const empty = await scriptOf("/nothing-is-kept-here");
  const verdicts = await scriptOf("/verdicts/2026-03-11");
  console.info("script, verdicts over empty page:", {
    sent: verdicts.sent / empty.sent,
    unpacked: verdicts.unpacked / empty.unpacked,
  });
  expect(empty.unpacked).toBeGreaterThan(100_000);
  expect(verdicts.sent / empty.sent).toBeLessThanOrEqual(1.3);
  expect(verdicts.unpacked / empty.unpacked).toBeLessThanOrEqual(1.3);
});
