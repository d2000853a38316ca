import { expect, test } from "vitest";
import { axeFindings } from "#tests/support/axe.ts";
import { openPage } from "#tests/support/browser.ts";
import { withDemo } from "#tests/support/demo.ts";

const demo = withDemo();

test("a viewer's idea becomes a theme, goes by the days off, and is then found in season next month", async () => {
  const { page, complaints } = await openPage(demo.browser);
  await page.goto(`${demo.url}/bible/days`);
  await page.getByRole("button", { name: "Add days off" }).click();
  await page.getByLabel("What", { exact: true }).last().fill("Harbour days");
  await page.getByLabel("First day").last().fill("2026-04-16");
  await page
    .getByLabel(/^Last day/)
    .last()
    .fill("2026-04-17");
  await page.getByRole("button", { name: "Save the days" }).click();
  await page.waitForURL(/\/bible(#days)?$/);
  await page.goto(`${demo.url}/slate/themes`);
  await page.getByLabel("What somebody wished for").fill("pack a week of rope knots");
  await page.getByRole("button", { name: "Put it into the inbox" }).click();
  const idea = page.getByRole("listitem").filter({ hasText: "pack a week of rope knots" });
  await idea.getByRole("button", { name: "Make it a theme" }).click();
  await idea.getByText("Give it a name.").waitFor();
  await idea.getByLabel("Its name as a theme or a food").fill("Rope Locker");
  await idea.getByRole("button", { name: "Make it a theme" }).click();
  await page.getByText(/Settled before/).click();
  await idea.getByRole("link", { name: "became a theme" }).click();

  await page.getByRole("heading", { name: "Rope Locker", level: 1 }).waitFor();
  await page.getByLabel("Season").selectOption("By the school’s days off");
  await page.getByRole("button", { name: "Save this theme" }).click();
  await page.getByText("Choose the days off it goes by.").waitFor();
  await page.getByLabel("Which weeks").selectOption("the week after");
  await page.getByLabel("Days off", { exact: true }).selectOption("Harbour days");
  await page.getByRole("button", { name: "Save this theme" }).click();

  await page.waitForURL(/\/slate\/themes$/);
  await page.getByRole("link", { name: "In season in April" }).click();
  await page.waitForURL(/season=next-month$/);
  await page.getByRole("link", { name: "Never used" }).click();
  await page.waitForURL(/season=next-month&used=never/);
  await page.getByLabel("Name, motif or colour").fill("rope");
  await page.getByRole("button", { name: "Find" }).click();
  await page.getByText(/^1 of \d+ themes/).waitFor();
  const found = page.getByRole("listitem").filter({ hasText: "Rope Locker" });
  await found.getByText(/next possible in the week of Mon 20 April/).waitFor();
  expect(complaints).toEqual([]);
  await page.context().close();
});

test("a wish for a food leads to its page, which says that it waits to be filled in", async () => {
  const { page, complaints } = await openPage(demo.browser, { width: 390 });
  await page.goto(`${demo.url}/slate/themes`);
  await page.getByLabel("What somebody wished for").fill("star fruit boats");
  await page.getByRole("button", { name: "Put it into the inbox" }).click();
  const idea = page.getByRole("listitem").filter({ hasText: "star fruit boats" });
  await idea.getByLabel("Its name as a theme or a food").fill("Star fruit boats");
  await idea.getByRole("button", { name: "Wish for the food" }).click();
  await page.getByText(/Settled before/).click();
  await idea.getByRole("link", { name: "became a wished food" }).click();
  await page.getByText("it is not proposed or suggested until").waitFor();
  await page.getByRole("button", { name: "Save this food" }).click();
  await page.getByText("Saved.").waitFor();
  await page.getByText("it is not proposed or suggested until").waitFor({ state: "detached" });
  expect(complaints).toEqual([]);
  await page.context().close();
});

test.each(
  ["/slate/themes?season=next-month", "/slate/themes?q=no+such+word", "/slate/themes/new"].flatMap(
    (address) =>
      [390, 1280].flatMap((width) => [false, true].map((dark) => ({ address, width, dark }))),
  ),
)(
  "$address at $width px, dark $dark: no accessibility finding, nothing wider than the screen",
  async ({ address, width, dark }) => {
    const { page, complaints } = await openPage(demo.browser, { width, dark });
    await page.goto(demo.url + address);
    expect(await axeFindings(page)).toEqual([]);
    const overflow = await page.evaluate("document.documentElement.scrollWidth - innerWidth");
    expect(overflow).toBeLessThanOrEqual(0);
    expect(complaints).toEqual([]);
    await page.context().close();
  },
);
