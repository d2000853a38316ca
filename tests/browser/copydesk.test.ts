import { expect, test } from "vitest";
import { axeFindings } from "#tests/support/axe.ts";
import { openPage } from "#tests/support/browser.ts";
import { withDemo } from "#tests/support/demo.ts";

const demo = withDemo();

/** The week before the fixed day, in the demo: five lunches, all packed. */
const WEEK = "/copydesk/2026-03-02";

test("a sentence shows its record; a broken rule holds the copy back and is mended at one press", async () => {
  const { page, complaints } = await openPage(demo.browser);
  await page.goto(`${demo.url}${WEEK}/description`);
  await page.getByRole("button", { name: "Record 1", exact: true }).click();
  await page.getByRole("heading", { name: /^Record 1:/u }).waitFor();

  await page.getByRole("button", { name: "Change the words" }).click();
  const area = page.getByLabel("The text");
  const text = await area.inputValue();
  await area.fill(`${text}\nIt is safe for everybody.`);
  await page.getByRole("button", { name: "Keep these words" }).click();
  await page.getByText("Rule broken: No promise of safety or health").waitFor();
  const held = page.getByRole("button", { name: /^Copy text: \d guards? open$/u });
  expect(await held.isDisabled()).toBe(true);
  await page.getByRole("button", { name: "Strike the sentence" }).first().click();
  await page.getByRole("button", { name: "Copy text of Description" }).waitFor();
  expect(await page.getByText("It is safe for everybody.").count()).toBe(0);
  expect(complaints).toEqual([]);
  await page.context().close();
});

test("a verdict that changes turns a kept draft stale, and it is brought up to date", async () => {
  const { page, complaints } = await openPage(demo.browser);
  await page.context().grantPermissions(["clipboard-read", "clipboard-write"]);
  await page.goto(`${demo.url}${WEEK}/lunch-post?day=2026-03-05`);
  await page.getByRole("button", { name: /^Copy text of Lunch post/u }).click();
  await page.getByText("Copied.").waitFor();

  await page.goto(`${demo.url}/verdicts/2026-03-05`);
  await page.getByLabel("In Biscuit’s words (optional)").fill("Good for a lighthouse");
  // The page says so before the words, too: what counts is that they were taken.
  const taken = page.waitForResponse((answer) => answer.request().method() === "POST");
  await page.getByLabel("In Biscuit’s words (optional)").blur();
  await taken;
  await page.getByText("Everything tapped is kept.").waitFor();

  await page.goto(`${demo.url}${WEEK}/lunch-post?day=2026-03-05`);
  await page.getByText(/^Stale: \d sentences? needs? a second look\.$/u).waitFor();
  await page.getByRole("button", { name: "Bring it up to date" }).click();
  await page.getByRole("button", { name: "Bring it up to date" }).waitFor({ state: "detached" });
  expect(await page.getByText(/^Stale:/u).count()).toBe(0);
  expect(await page.getByText("Good for a lighthouse").count()).toBe(1);
  expect(complaints).toEqual([]);
  await page.context().close();
});

test("a template’s error is told by its line, and a mended one writes the preview", async () => {
  const { page, complaints } = await openPage(demo.browser);
  await page.goto(`${demo.url}/copydesk/templates/teaser`);
  const area = page.getByLabel("The template, in Liquid");
  await area.fill("{{ next }}\n{{ nothing_here }}");
  await page.getByText("Line 2: There is nothing called “nothing_here” here.").waitFor();
  await area.fill("Until then! {{ next }}");
  await page
    .getByRole("region", { name: "Preview" })
    .getByText(/^Until then! /u)
    .waitFor();
  await page.getByRole("button", { name: "Keep as version 1" }).click();
  await page.getByRole("button", { name: "Version 1", exact: true }).waitFor();
  expect(complaints).toEqual([]);
  await page.context().close();
});

test("an episode is marked as published with its address", async () => {
  const { page, complaints } = await openPage(demo.browser);
  await page.goto(demo.url + WEEK);
  await page.getByLabel("Address (optional)").fill("not an address");
  await page.getByRole("button", { name: "Mark as published" }).click();
  await page.getByText("An address begins with https://").waitFor();
  await page.getByLabel("Address (optional)").fill("https://video.example/39");
  await page.getByRole("button", { name: "Mark as published" }).click();
  await page.getByText(/^Published on Wed 11 March/u).waitFor();
  expect(complaints).toEqual([]);
  await page.context().close();
});

test("a post of the board is kept, marked as published, and listed", async () => {
  const { page, complaints } = await openPage(demo.browser, { width: 390 });
  await page.goto(`${demo.url}/copydesk/board?food=carrot-sticks`);
  await page.getByRole("button", { name: "Keep this post" }).click();
  await page.getByRole("heading", { name: "Board post" }).waitFor();
  await page.getByRole("button", { name: "Record 1", exact: true }).first().click();
  await page.getByRole("heading", { name: /^Record 1:/u }).waitFor();
  expect(await axeFindings(page)).toEqual([]);
  await page.getByRole("button", { name: "Mark as published" }).click();
  await page.getByText("Published on Wed 11 March.").waitFor();
  await page.getByRole("link", { name: "All board posts" }).click();
  const posts = page.getByRole("region", { name: "Kept posts" });
  await posts.getByRole("link", { name: /we packed carrot sticks:$/u }).waitFor();
  expect(await posts.getByText("Published on Wed 11 March").count()).toBe(1);
  expect(complaints).toEqual([]);
  await page.context().close();
});

test("a newer template asks which way a passage goes that the user changed too", async () => {
  const { page, complaints } = await openPage(demo.browser);
  const teaser = `${demo.url}/copydesk/2026-02-23/teaser`;
  const template = async (text: string): Promise<void> => {
    await page.goto(`${demo.url}/copydesk/templates/teaser`);
    await page.waitForLoadState("networkidle");
    await page.getByLabel("The template, in Liquid").fill(text);
    const last = text.split("\n").at(-1) ?? "";
    await page.getByRole("region", { name: "Preview" }).getByText(last).waitFor();
    const keep = page.getByRole("button", { name: /^Keep as version \d+$/u });
    const name = (await keep.textContent()) ?? "";
    await keep.click();
    await page.getByRole("button", { name, exact: true }).waitFor({ state: "detached" });
  };
  await template("{{ next }}\nUntil then.");
  await page.goto(teaser);
  await page.getByRole("button", { name: "Change the words" }).click();
  const area = page.getByLabel("The text");
  await area.fill((await area.inputValue()).replace("Until then.", "Mind the gulls."));
  await page.getByRole("button", { name: "Keep these words" }).click();
  await page.getByText("Mind the gulls.").waitFor();
  await template("{{ next }}\nSee you soon.");
  await page.goto(teaser);
  await page.getByRole("button", { name: "Write it with the new template" }).click();
  await page.getByText("Say for each passage which way it goes.").waitFor();
  expect(await axeFindings(page)).toEqual([]);
  await page.getByLabel("Keep both").check();
  await page.getByRole("button", { name: "Write it with the new template" }).click();
  await page.getByText("Your template has changed").waitFor({ state: "detached" });
  await page.getByText("See you soon.").waitFor();
  expect(await page.getByText("Mind the gulls.").count()).toBe(1);
  expect(complaints).toEqual([]);
  await page.context().close();
});

const PAGES = [
  WEEK,
  `${WEEK}/outline`,
  `${WEEK}/files`,
  "/copydesk/templates/description",
  "/copydesk/board?food=carrot-sticks",
] as const;

test.each(
  PAGES.flatMap((address) =>
    [390, 1280].flatMap((width) => [false, true].map((dark) => ({ address, width, dark }))),
  ),
)(
  "$address at $width px, dark $dark: no accessibility finding, nothing wider than the screen",
  async ({ address, width, dark }) => {
    const { page, complaints } = await openPage(demo.browser, { width, dark });
    const response = await page.goto(demo.url + address);
    expect(response?.status()).toBe(200);
    expect(await axeFindings(page)).toEqual([]);
    const overflow = await page.evaluate("document.documentElement.scrollWidth - innerWidth");
    expect(overflow).toBeLessThanOrEqual(0);
    expect(complaints).toEqual([]);
    await page.context().close();
  },
);

test.each(["/copydesk/2026-03-03", "/copydesk/soon", `${WEEK}/poem`, "/copydesk/templates/poem"])(
  "%s leads to no record and says so with 404",
  async (address) => {
    const response = await fetch(demo.url + address);
    expect(response.status).toBe(404);
  },
);
