import { chromium, type Browser, type Page } from "playwright-core";

const FLAGS = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

/** A headless browser; `CHROMIUM_PATH` says where it is. */
export function openBrowser(): Promise<Browser> {
  const executablePath = process.env["CHROMIUM_PATH"] ?? "/usr/bin/chromium";
  return chromium.launch({ executablePath, args: FLAGS });
}

/** A page that remembers what the console and the page complained of; `complaints` must stay empty. */
export async function openPage(
  browser: Browser,
  options: { readonly width: number; readonly dark?: boolean } = { width: 1280 },
): Promise<{ readonly page: Page; readonly complaints: string[] }> {
  const context = await browser.newContext({
    viewport: { width: options.width, height: 900 },
    colorScheme: options.dark ? "dark" : "light",
  });
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on("console", (message) => {
    if (message.type() === "error") complaints.push(message.text());
  });
  page.on("pageerror", (error) => complaints.push(error.message));
  return { page, complaints };
}

/** How many pages of A4 a page prints on: its page objects in the PDF. */
export async function printedPages(page: Page): Promise<number> {
  const pdf = (await page.pdf({ format: "A4", preferCSSPageSize: true })).toString("latin1");
  return pdf.match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;
}

/** The smallest size at which words of the sheet are printed, in points. */
export async function smallestPrint(page: Page): Promise<number> {
  await page.emulateMedia({ media: "print" });
  const pixels = await page.getByRole("article").evaluate((sheet) =>
    Math.min(
      ...[...sheet.querySelectorAll("*")].flatMap((part) => {
        const hasWords = [...part.childNodes].some(
          (node) => node.nodeType === Node.TEXT_NODE && node.textContent?.trim() !== "",
        );
        const isShown = part.checkVisibility() && !part.closest(".sr, svg");
        return hasWords && isShown ? [parseFloat(getComputedStyle(part).fontSize)] : [];
      }),
    ),
  );
  await page.emulateMedia({ media: null });
  // 96 CSS pixels are an inch, and so are 72 points (CSS Values 3, §5.2).
  return Math.round(pixels * 7500) / 10000;
}
