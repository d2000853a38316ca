import { afterAll, beforeAll, expect, test } from "vitest";
import type { Browser } from "playwright-core";
import sharp from "sharp";
import { axeFindings } from "#tests/support/axe.ts";
import { openBrowser, openPage } from "#tests/support/browser.ts";
import { startServer, type RunningServer } from "#tests/support/server.ts";

const DAY = "/verdicts/2026-03-11";
/** A line is cut on purpose here: what the browser says of it is no fault of the page. */
const CUT = /ERR_INTERNET_DISCONNECTED/;

/** A phone's picture, three hundred across. */
const PHOTO = {
  name: "IMG_0001.jpg",
  mimeType: "image/jpeg",
  buffer: await sharp({ create: { width: 300, height: 200, channels: 3, background: "#c84" } })
    .jpeg()
    .toBuffer(),
};

let server: RunningServer;
let browser: Browser;

beforeAll(async () => {
  server = await startServer("2026-03-11");
  browser = await openBrowser();
  const { page } = await openPage(browser);
  await page.goto(`${server.url}/welcome`);
  await page.getByRole("button", { name: /demo/i }).click();
  await page.getByRole("heading", { name: "March 2026" }).waitFor();
  await page.context().close();
});
afterAll(async () => {
  await browser.close();
  server.stop();
});

test("a whole day of two children is logged with the line cut, survives a cold start, and arrives", async () => {
  const { page, complaints } = await openPage(browser, { width: 390 });
  await page.goto(server.url + DAY);
  await page.getByText("Everything tapped is kept.").waitFor();
  await page.getByText("This day also opens without a connection.").waitFor();
  const items = await page
    .getByRole("group", { name: "Which item" })
    .getByRole("button")
    .allTextContents();
  await page.context().setOffline(true);
  await server.crash();

  for (const item of items) {
    await page
      .getByRole("group", { name: "Which item" })
      .getByRole("button", { name: item })
      .click();
    const eaten = page.getByRole("group", { name: "How much was eaten?" });
    await eaten.getByRole("button", { name: "½" }).click();
    await page
      .getByRole("group", { name: "How was it, Biscuit?" })
      .getByRole("button")
      .last()
      .click();
  }
  await page.getByLabel("In Biscuit’s words (optional)").fill("the train ran out of coal");
  await page.getByLabel("In Biscuit’s words (optional)").blur();
  await page.getByRole("button", { name: /^Pepper/ }).click();
  await page.getByRole("button", { name: "Same as Biscuit" }).click();
  await page.getByRole("button", { name: "Undo" }).click();
  await page.getByRole("button", { name: "All of it" }).click();
  await page.getByLabel("Minutes it took (optional)").fill("19");
  await page.getByLabel("What was hard (optional)").fill("the coal was blackberries");
  await page.getByLabel("What was hard (optional)").press("Enter");
  await page.getByLabel("Take or choose a photo").setInputFiles(PHOTO);
  await page.getByRole("button", { name: "Keep the photo" }).click();
  await page.getByRole("img", { name: "Photo 1, on this phone" }).waitFor();
  await page.getByText(/Kept on this phone\. \d+ entries wait for the kitchen network\./).waitFor();

  // The phone dies: a new page, no server, no line.
  const again = await page.context().newPage();
  await page.close();
  await again.goto(server.url + DAY);
  await again.getByText(/Kept on this phone\. \d+ entries wait/).waitFor();
  await again.getByText("“the train ran out of coal” (waits to be sent)").waitFor();
  await again
    .getByRole("button", { name: `Pepper ${items.length} of ${items.length} logged` })
    .waitFor();

  expect(await again.getByLabel("Minutes it took (optional)").inputValue()).toBe("19");
  await again.getByRole("img", { name: "Photo 1, on this phone" }).waitFor();
  const width = "document.querySelector('img[src^=blob]').naturalWidth";
  await expect.poll(() => again.evaluate(width)).toBe(300);
  expect(await axeFindings(again)).toEqual([]);

  await server.restart();
  await again.context().setOffline(false);
  await again.getByText("Everything tapped is kept.").waitFor();
  await again.getByRole("img", { name: "Photo 1 of this lunch" }).waitFor();
  expect(complaints.filter((one) => !CUT.test(one))).toEqual([]);
  await again.context().close();

  const { page: other } = await openPage(browser, { width: 390 });
  await other.goto(server.url + DAY);
  await other.getByRole("img", { name: new RegExp(`${items[0] ?? ""} ½ eaten`, "i") }).waitFor();
  await other.getByText("“the train ran out of coal”").waitFor();
  expect(await other.getByLabel("Minutes it took (optional)").inputValue()).toBe("19");
  const hard = await other.getByLabel("What was hard (optional)").inputValue();
  expect(hard).toBe("the coal was blackberries");
  await other.getByRole("img", { name: "Photo 1 of this lunch" }).waitFor();
  expect(await other.getByRole("img", { name: /^Photo \d/ }).count()).toBe(1);
  await other.getByRole("button", { name: /^Pepper/ }).click();
  await other.getByRole("img", { name: new RegExp(`${items[0] ?? ""} all eaten`, "i") }).waitFor();
  await other.context().close();
});

test("what two phones said differently is asked about, and the choice is kept on both", async () => {
  const day = "/verdicts/2026-03-10";
  const phones = [await openPage(browser, { width: 390 }), await openPage(browser, { width: 390 })];
  for (const { page } of phones) {
    await page.goto(server.url + day);
    await page.getByText("This day also opens without a connection.").waitFor();
    await page.context().setOffline(true);
  }
  const [one, two] = phones;
  if (!one || !two) throw new Error("Two phones were opened.");
  await one.page
    .getByRole("group", { name: "How much" })
    .getByRole("button", { name: "¼" })
    .click();
  await two.page
    .getByRole("group", { name: "How much" })
    .getByRole("button", { name: "¾" })
    .click();
  for (const { page } of phones) {
    await page.getByText("1 entry waits").waitFor();
    await page.context().setOffline(false);
    await page.getByText("Everything tapped is kept.").waitFor();
  }
  const clash = two.page.getByRole("region", { name: "Two phones disagree" });
  await clash.getByRole("button", { name: /^¼ eaten/ }).waitFor();
  expect(await axeFindings(two.page)).toEqual([]);
  await clash.getByRole("button", { name: /^¾ eaten/ }).click();
  await clash.waitFor({ state: "detached" });
  await two.page.getByText("Everything tapped is kept.").waitFor();

  await one.page.reload();
  await one.page.getByRole("img", { name: /^Tray: .*?¾ eaten/ }).waitFor();
  await one.page.getByText("Amended later: 1 verdict").click();
  await one.page.getByText(/^¼ eaten, \d+ \w+, \d\d:\d\d$/).waitFor();
  for (const { page, complaints } of phones) {
    expect(complaints.filter((line) => !CUT.test(line))).toEqual([]);
    await page.context().close();
  }
});

test.each([
  ["no JSON", "{", 400],
  ["no entries", `{"entries":[]}`, 400],
  ["61 entries", JSON.stringify({ entries: Array.from({ length: 61 }, () => ({})) }), 400],
])("%s is told apart from entries with %s", async (_, body, status) => {
  const response = await fetch(`${server.url}/verdicts/entries`, { method: "POST", body });
  expect(response.status).toBe(status);
});

test("an entry that is not whole is refused by itself, with why", async () => {
  const response = await fetch(`${server.url}/verdicts/entries`, {
    method: "POST",
    body: JSON.stringify({ entries: [{ id: "none" }] }),
  });
  expect(await response.json()).toMatchObject({
    answers: [{ kind: "refused", message: "This entry has no proper id." }],
  });
});
