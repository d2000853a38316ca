// Lets the verdict pages open without a connection. Network first; it keeps the few verdict pages
// opened lately and the hashed files they are made of, and nothing else.
const PAGES = "verdict-pages";
const FILES = "hashed-files";
/** Where a device is sent that is not let in. */
const DOOR = "/let-in";
const PAGES_MOST = 4;
const FILES_MOST = 160;
/** A phone at the edge of the network waits this long for a page before it takes the kept one. */
const PATIENCE_MS = 4000;

self.addEventListener("install", () => self.skipWaiting());
self.addEventListener("activate", (event) => event.waitUntil(self.clients.claim()));

self.addEventListener("fetch", (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== "GET" || url.origin !== self.location.origin) return;
  if (request.mode === "navigate" && isVerdictPage(url.pathname)) {
    event.respondWith(openPage(event, url));
  } else if (url.pathname.startsWith("/_next/static/")) {
    event.respondWith(openFile(request));
  }
});

// The page tells what it was made of: it was loaded before this worker stood between. A series that is
// started or left tells to forget the pages of the one before.
self.addEventListener("message", (event) => {
  if (event.data?.kind === "forget") event.waitUntil(forget());
  if (event.data?.kind !== "keep") return;
  event.waitUntil(
    keepAll(event.data.page, event.data.files).then(() =>
      event.source?.postMessage({ kind: "kept" }),
    ),
  );
});

function isVerdictPage(pathname) {
  return pathname === "/verdicts" || /^\/verdicts\/\d{4}-\d{2}-\d{2}$/.test(pathname);
}

async function openPage(event, url) {
  const kept = await (await caches.open(PAGES)).match(url.pathname);
  const answer = fetch(event.request).then((response) => takeIn(response, url));
  // An answer that comes too late to be shown is taken in all the same.
  event.waitUntil(answer.catch(() => undefined));
  try {
    return await (kept ? patiently(answer) : answer);
  } catch {
    return kept ?? lastPage();
  }
}

/** Keeps a page that came whole; where the door stands instead, this device is let in no more. */
async function takeIn(response, url) {
  if (await isTheDoor(response, url)) await forget();
  else if (isWhole(response)) await keepPage(url.pathname, response.clone());
  return response;
}

/** True for a refusal and for a way to the door. A redirect does not say where it leads: that is asked. */
async function isTheDoor(response, url) {
  if (response.status === 401) return true;
  if (response.redirected) return leadsToTheDoor(response);
  if (response.type !== "opaqueredirect") return false;
  const followed = await fetch(url.href, { headers: { Accept: "text/html" } }).catch(
    () => undefined,
  );
  return followed !== undefined && (followed.status === 401 || leadsToTheDoor(followed));
}

function leadsToTheDoor(response) {
  return response.redirected && new URL(response.url).pathname === DOOR;
}

function forget() {
  return caches.delete(PAGES);
}

/** Only our own page as asked for: a door that asks for the passphrase is not kept. */
function isWhole(response) {
  return response.ok && response.type === "basic" && !response.redirected;
}

function patiently(answer) {
  const late = new Promise((_, reject) => setTimeout(() => reject(new Error("late")), PATIENCE_MS));
  return Promise.race([answer, late]);
}

async function keepPage(pathname, response) {
  const pages = await caches.open(PAGES);
  await pages.delete(pathname);
  await pages.put(pathname, response);
  await trim(pages, PAGES_MOST);
}

async function lastPage() {
  const keys = await (await caches.open(PAGES)).keys();
  const last = keys.at(-1);
  if (last) return Response.redirect(last.url);
  return new Response(
    "<!doctype html><meta name=viewport content='width=device-width'><title>No connection</title><p style='font:1rem sans-serif;margin:2rem'>Noonbook cannot be reached, and no day was opened on this phone before. Come back near the kitchen network.",
    { status: 503, headers: { "Content-Type": "text/html; charset=utf-8" } },
  );
}

async function openFile(request) {
  const files = await caches.open(FILES);
  const kept = await files.match(request);
  if (kept) return kept;
  const response = await fetch(request);
  if (isWhole(response)) await files.put(request, response.clone());
  return response;
}

async function keepAll(page, list) {
  const files = await caches.open(FILES);
  await Promise.all(
    list.map(async (file) => {
      if (await files.match(file)) return;
      const response = await fetch(file);
      if (isWhole(response)) await files.put(file, response);
    }),
  );
  await trim(files, FILES_MOST);
  await takeIn(await fetch(page), new URL(page, self.location.origin));
}

/** Keys stand in the order they were put: the oldest go. */
async function trim(cache, most) {
  const keys = await cache.keys();
  await Promise.all(keys.slice(0, Math.max(0, keys.length - most)).map((key) => cache.delete(key)));
}
