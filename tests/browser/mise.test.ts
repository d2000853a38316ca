import { expect, test } from "vitest";
import { axeFindings } from "#tests/support/axe.ts";
import { openPage, printedPages, smallestPrint } from "#tests/support/browser.ts";
import { withDemo } from "#tests/support/demo.ts";

const demo = withDemo();

test("prep is ticked off with its minutes, seen on the call sheet, and re-planned from a time", async () => {
  const { page, complaints } = await openPage(demo.browser);
  await page.goto(`${demo.url}/mise`);
  await page.waitForURL(/mise\/2026-03-11$/);
  await page.getByRole("heading", { name: "Prep for Wednesday" }).waitFor();
  await page.getByText(/is proven: no order of these \d+ steps begins later/).waitFor();
  await page.getByRole("img", { name: /^The evening by cook and appliance/ }).waitFor();

  const took = page.getByLabel(/^Took, minutes: Fish cakes: shape/);
  await took.fill("soon");
  await took.blur();
  await page.getByText("Write the minutes as a number.").waitFor();
  await took.fill("15");
  await took.blur();
  const done = page.getByRole("checkbox", { name: "Done: Fish cakes: shape" });
  await page.getByText("Write the minutes as a number.").waitFor({ state: "detached" });
  await page.reload();
  expect(await done.isChecked()).toBe(true);
  expect(await took.inputValue()).toBe("15");

  await page.goto(`${demo.url}/callsheet/2026-03-11`);
  const prep = page.getByRole("region", { name: "Prep left" });
  expect(await prep.getByRole("checkbox", { name: "Done: Fish cakes: shape" }).isChecked()).toBe(
    true,
  );
  await prep.getByRole("checkbox", { name: "Done: Pack, on camera" }).focus();
  await page.keyboard.press("Space");
  await page.getByText(/^\d+ of \d+ left/).waitFor();
  await page.getByRole("link", { name: "Open the mise" }).click();

  await page.getByRole("heading", { name: "Prep for Wednesday" }).waitFor();
  await page.getByLabel("Re-plan what is left from").fill("07:00");
  await page.getByRole("button", { name: "Re-plan" }).click();
  await page.getByText("planned anew from 07:00").waitFor();
  await page.getByText(/^Done: .*Fish cakes: shape/).waitFor();
  expect(await page.getByRole("checkbox", { name: "Done: Fish cakes: shape" }).count()).toBe(0);
  await page.getByRole("link", { name: "Back to the plan from the start" }).click();
  await done.waitFor();
  await done.uncheck();
  await page.reload();
  expect(await done.isChecked()).toBe(false);
  expect(complaints).toEqual([]);
  await page.context().close();
});

test("the now-line stands where the kitchen clock does, on the day only", async () => {
  const { page, complaints } = await openPage(demo.browser);
  const zone = await page.evaluate<string>("Intl.DateTimeFormat().resolvedOptions().timeZone");
  for (const [address, isShown] of [
    ["/mise/2026-03-11", true],
    ["/mise/2026-03-12", false],
  ] as const) {
    await page.clock.setFixedTime(new Date("2026-03-11T07:40:00"));
    await page.goto(demo.url + address);
    await page.getByText(`Times are those of ${zone}`).waitFor();
    const line = page.getByText("now 07:40");
    if (isShown) await line.waitFor();
    else {
      await page.waitForLoadState("networkidle");
      expect(await line.count()).toBe(0);
    }
  }
  expect(complaints).toEqual([]);
  await page.context().close();
});

test("the calendar comes as a file and as a feed", async () => {
  for (const address of ["/mise/2026-03-11/calendar.ics", "/mise/calendar.ics"]) {
    const response = await fetch(demo.url + address);
    expect(response.status).toBe(200);
    expect(response.headers.get("content-type")).toMatch(/^text\/calendar/);
    const text = await response.text();
    expect(text).toMatch(/^BEGIN:VCALENDAR\r\n/);
    expect(text).toContain("UID:morning-2026-03-11@noonbook");
    expect(text).not.toMatch(/Ines|Tomas/);
  }
});

test.each([
  "/mise/2026-02-30",
  "/mise/tomorrow",
  "/mise/2026-03-11?from=25:00",
  "/mise/2026-03-14/calendar.ics",
])("%s leads nowhere and says so with 404", async (address) => {
  const response = await fetch(demo.url + address);
  expect(response.status).toBe(404);
});

test.each(
  ["/mise/2026-03-11", "/mise/2026-03-11?from=07:45", "/callsheet/2026-03-11"].flatMap((address) =>
    [390, 1280].flatMap((width) => [false, true].map((dark) => ({ address, width, dark }))),
  ),
)("$address at $width px, dark $dark: no finding, nothing too wide", async (wanted) => {
  const { page, complaints } = await openPage(demo.browser, wanted);
  await page.goto(demo.url + wanted.address);
  expect(await axeFindings(page)).toEqual([]);
  expect(await page.evaluate("document.documentElement.scrollWidth - innerWidth")).toBeLessThan(1);
  expect(complaints).toEqual([]);
  await page.context().close();
});

test("mise and call sheet print on one page of A4 on every day of a week, nothing smaller than 8 pt", async () => {
  const { page } = await openPage(demo.browser);
  for (const room of ["mise", "callsheet"]) {
    for (const day of [9, 10, 11, 12, 13]) {
      const address = `/${room}/2026-03-${String(day).padStart(2, "0")}`;
      await page.goto(demo.url + address);
      expect(await printedPages(page), address).toBe(1);
      expect(await smallestPrint(page), address).toBeGreaterThanOrEqual(8);
    }
  }
  await page.context().close();
});
