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
