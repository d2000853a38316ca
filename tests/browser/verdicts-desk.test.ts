import { expect, test } from "vitest";
import { openPage } from "#tests/support/browser.ts";
import { withDemo } from "#tests/support/demo.ts";

const DAY = "/verdicts/2026-03-11";

const demo = withDemo();

test("an item is chosen on the tray and emptied on its drawing; the whole child takes two taps an item", async () => {
  const { page, complaints } = await openPage(demo.browser, { width: 390 });
  await page.goto(demo.url + DAY);
  await page.getByText("This day also opens without a connection.").waitFor();
  const items = page.getByRole("group", { name: "Which item" });
  const count = await items.getByRole("button").count();
  const tray = page.getByRole("img", { name: /^Tray: / });
  const box = await tray.boundingBox();
  if (!box) throw new Error("The tray has no place on the screen.");
  // The first compartment of a squarified treemap, upper left, is the largest.
  await tray.click({ position: { x: box.width * 0.3, y: box.height * 0.25 } });
  const largest = /Tray: .*/.exec((await tray.getAttribute("aria-label")) ?? "")?.[0] ?? "";
  const shares = [...largest.matchAll(/(?:Tray: |, )(.+?) (\d+) %/g)].map(
    ([, name = "", share]) => [name, Number(share)] as const,
  );
  const [first] = shares.toSorted(([, one], [, other]) => other - one);
  await items.getByRole("button", { name: first?.[0] ?? "", pressed: true }).waitFor();

  const drawing = page.getByText("drag down");
  const place = await drawing.boundingBox();
  if (!place) throw new Error("The portion is not drawn.");
  const [x, y] = [place.x + place.width / 2, place.y + place.height / 2];
  await page.mouse.move(x, y - 30);
  await page.mouse.down();
  await page.mouse.move(x, y + 24, { steps: 4 });
  await page.mouse.up();
  const eaten = page.getByRole("group", { name: "How much was eaten?" });
  await eaten.getByRole("button", { name: "¾", pressed: true }).waitFor();
  await page.getByRole("button", { name: "Undo" }).click();
  await drawing.waitFor();

  let taps = 1;
  await page.getByRole("button", { name: "All of it" }).click();
  await items.getByRole("button").first().click();
  for (let at = 0; at < count; at += 1) {
    await page
      .getByRole("group", { name: /^How was it/ })
      .getByRole("button")
      .last()
      .click();
    taps += 1;
    if (at + 1 === count) break;
    await page.getByRole("button", { name: /^Next: / }).click();
    taps += 1;
  }
  await page.getByRole("button", { name: `Biscuit ${count} of ${count} logged` }).waitFor();
  expect(taps).toBeLessThanOrEqual(2 * count);
  await page.getByText("Everything tapped is kept.").waitFor();
  expect(complaints).toEqual([]);
  await page.context().close();
});

test("what could not be sent is told in every other room, with the way to where it is sent", async () => {
  const { page } = await openPage(demo.browser, { width: 390 });
  await page.route("**/verdicts/entries", (route) => route.fulfill({ status: 503 }));
  await page.goto(demo.url + DAY);
  await page.getByRole("button", { name: /^Pepper/ }).click();
  await page
    .getByRole("group", { name: "How much was eaten?" })
    .getByRole("button", { name: "¼" })
    .click();
  await page.getByText("Kept on this phone. 1 entry waits for the kitchen network.").waitFor();
  await page.goto(`${demo.url}/ledger`);
  const flag = page.getByRole("link", { name: "1 entry waits on this phone: send" });
  await flag.waitFor();
  await page.unroute("**/verdicts/entries");
  await flag.click();
  await page.getByText("Everything tapped is kept.").waitFor();
  await page.getByRole("link", { name: "Ledger", exact: true }).click();
  await page.getByRole("heading", { name: "What the records say" }).waitFor();
  expect(await flag.count()).toBe(0);
  await page.context().close();
});
