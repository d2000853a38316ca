import { expect, test } from "vitest";
import sharp from "sharp";
import { axeFindings } from "#tests/support/axe.ts";
import { openPage } from "#tests/support/browser.ts";
import { withDemo } from "#tests/support/demo.ts";
import { jpegSegments } from "#tests/support/jpeg-segments.ts";

const DAY = "/verdicts/2026-03-10";

const demo = withDemo();

/** A phone's picture lying on its side, with maker, place and time in it. */
function phonePicture(): Promise<Buffer> {
  return sharp({ create: { width: 300, height: 200, channels: 3, background: "#c84" } })
    .jpeg()
    .withExif({
      IFD0: { Make: "Harbour Optics", DateTime: "2026:03:10 07:41:00" },
      IFD3: { GPSLatitudeRef: "N", GPSLatitude: "54/1 19/1 0/1" },
    })
    .withMetadata({ orientation: 6 })
    .toBuffer();
}

test("the facts of a day are typed, corrected and kept as the fields are left", async () => {
  const { page, complaints } = await openPage(demo.browser, { width: 390 });
  await page.goto(demo.url + DAY);
  const minutes = page.getByLabel("Minutes it took (optional)");
  const hard = page.getByLabel("What was hard (optional)");
  const pickups = page.getByLabel("Pick-ups: what the camera missed (optional)");
  await minutes.fill("about twenty");
  await hard.fill("the bay leaf would not lie flat");
  await page.getByText("Write the minutes as a number.").waitFor();
  expect(await minutes.inputValue()).toBe("about twenty");
  expect(await minutes.getAttribute("aria-invalid")).toBe("true");
  await minutes.fill("21,5");
  await minutes.press("Enter");
  await pickups.fill("the lid from above");
  await pickups.blur();
  await page.getByText("Everything tapped is kept.").waitFor();

  await page.reload();
  expect(await minutes.inputValue()).toBe("21.5");
  expect(await hard.inputValue()).toBe("the bay leaf would not lie flat");
  expect(await pickups.inputValue()).toBe("the lid from above");
  expect(complaints).toEqual([]);
  await page.context().close();
});

test("two phones say different minutes: both are kept, and one asks", async () => {
  const day = "/verdicts/2026-03-09";
  const phones = [
    await openPage(demo.browser, { width: 390 }),
    await openPage(demo.browser, { width: 390 }),
  ];
  for (const { page } of phones) {
    await page.goto(demo.url + day);
    await page.getByText("This day also opens without a connection.").waitFor();
    await page.context().setOffline(true);
  }
  for (const [index, { page }] of phones.entries()) {
    await page.getByLabel("Minutes it took (optional)").fill(String(30 + index));
    await page.getByLabel("Minutes it took (optional)").press("Enter");
    await page.getByText("Kept on this phone. 1 entry waits").waitFor();
  }
  for (const { page } of phones) {
    await page.context().setOffline(false);
    await page.getByText("Everything tapped is kept.").waitFor();
  }
  const last = phones[1]?.page;
  const clash = last?.getByRole("region", { name: "Two phones disagree" });
  await clash?.getByText("How many minutes did it take?").waitFor();
  await clash?.getByRole("button", { name: /^30 minutes/ }).click();
  await clash?.waitFor({ state: "detached" });
  expect(await last?.getByLabel("Minutes it took (optional)").inputValue()).toBe("30");
  for (const { page } of phones) await page.context().close();
});

test("a photo is kept upright with nothing else in it, shown, and taken back", async () => {
  const { page, complaints } = await openPage(demo.browser, { width: 390 });
  await page.goto(demo.url + DAY);
  const taken = await phonePicture();
  expect(taken.includes("Harbour Optics")).toBe(true);
  const photo = { name: "IMG_0001.jpg", mimeType: "image/jpeg", buffer: taken };
  await page.getByLabel("Take or choose a photo").setInputFiles(photo);
  await page.getByRole("button", { name: "Keep the photo" }).click();
  const shown = page.getByRole("img", { name: "Photo 1 of this lunch" });
  await shown.waitFor();
  const link = page.getByRole("link", { name: "Photo 1 of this lunch" });
  const address = (await link.getAttribute("href")) ?? "";
  const response = await page.request.get(demo.url + address);
  const kept = await response.body();
  expect(await sharp(kept).metadata()).toMatchObject({ width: 200, height: 300 });
  // No Exif, XMP or IPTC segment (ITU-T T.81, B.2.4.6: APP1 to APP15).
  const extra = jpegSegments(kept).filter(({ marker }) => marker >= 0xffe1 && marker <= 0xffef);
  expect(extra).toEqual([]);
  expect(kept.includes("Harbour Optics")).toBe(false);
  const sheet = await page.request.get(`${demo.url}/photos/week/2026-03-09`);
  expect([sheet.status(), sheet.headers()["content-type"]]).toEqual([200, "image/jpeg"]);

  await page.getByRole("button", { name: "Remove photo 1" }).click();
  await shown.waitFor({ state: "detached" });
  expect((await page.request.get(demo.url + address)).status()).toBe(404);
  expect(complaints).toEqual([]);
  await page.context().close();
});

test("a file that is no picture is refused in words, and the page stays", async () => {
  const { page } = await openPage(demo.browser, { width: 390 });
  await page.goto(demo.url + DAY);
  const text = { name: "note.jpg", mimeType: "image/jpeg", buffer: Buffer.from("not a picture") };
  await page.getByLabel("Take or choose a photo").setInputFiles(text);
  await page.getByRole("button", { name: "Keep the photo" }).click();
  const told = page.getByText(/^Not kept: a photo of this day\. This is no picture/);
  await told.waitFor();
  expect(await page.getByRole("img", { name: "Photo 1 of this lunch" }).count()).toBe(0);
  await page.getByRole("button", { name: "Let it go" }).click();
  await told.waitFor({ state: "detached" });
  await page.context().close();
});

test.each([
  [390, false],
  [390, true],
  [1280, false],
  [1280, true],
])("with a photo on its shelf the page passes axe at %i px (dark: %s)", async (width, dark) => {
  const { page } = await openPage(demo.browser, { width, dark });
  await page.goto(demo.url + DAY);
  const photo = { name: "a.jpg", mimeType: "image/jpeg", buffer: await phonePicture() };
  await page.getByLabel("Take or choose a photo").setInputFiles(photo);
  await page.getByRole("button", { name: "Keep the photo" }).click();
  await page.getByRole("img", { name: "Photo 1 of this lunch" }).waitFor();
  expect(await axeFindings(page)).toEqual([]);
  await page.context().close();
});
