import { createServer, type IncomingHttpHeaders } from "node:http";
import type { AddressInfo } from "node:net";
import { X509Certificate } from "node:crypto";
import { request as encryptedRequest } from "node:https";
import { mkdtempSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { describe, expect, it, onTestFinished } from "vitest";
import { localCertificate } from "#app/_start/certificate.ts";
import { openGate, type Gate } from "#app/_start/gate.ts";
import type { Database } from "#lib/db/index.ts";
import { isLetIn, letIn, listDevices, sendOut } from "#lib/use-cases/let-in.ts";
import { hasPassphrase, setPassphrase } from "#lib/use-cases/set-passphrase.ts";
import { testContext } from "#tests/support/test-context.ts";

const PHRASE = "four lamps over the quay";

const WAYS_BACK = [
  ["/verdicts/2026-03-11", "/verdicts/2026-03-11"],
  ["/larder?show=all", "/larder?show=all"],
  ["//elsewhere.example", "/"],
  ["/\\elsewhere.example", "/"],
  ["https://elsewhere.example", "/"],
  ["/slate\r\nset-cookie: a=b", "/"],
  ["/let-in?to=/let-in", "/"],
] as const;

type Behind = {
  readonly port: number;
  readonly seen: { url: string; headers: IncomingHttpHeaders; body: string }[];
};

/** A server that stands for the pages and notes what reaches it. */
async function behind(): Promise<Behind> {
  const seen: Behind["seen"] = [];
  const server = createServer((request, response) => {
    let body = "";
    request.on("data", (chunk: Buffer) => (body += chunk.toString()));
    request.on("end", () => {
      seen.push({ url: request.url ?? "", headers: request.headers, body });
      response.end("the page");
    });
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  onTestFinished(() => void server.close());
  return { port: (server.address() as AddressInfo).port, seen };
}

async function gate(db: Database, port: number): Promise<Gate> {
  const opened = await openGate({ db, address: "127.0.0.1", port: 0, behindPort: port });
  onTestFinished(opened.close);
  return opened;
}

function typePassphrase(origin: string, passphrase: string, from = origin): Promise<Response> {
  return fetch(`${origin}/let-in`, {
    method: "POST",
    redirect: "manual",
    headers: { origin: from, "user-agent": "a phone" },
    body: new URLSearchParams({ passphrase }),
  });
}

describe("the gate", () => {
  it("hands out nothing before the passphrase, and everything after it", async () => {
    const { db } = testContext();
    const server = await behind();
    await setPassphrase({ db }, { next: PHRASE });
    const { origin } = await gate(db, server.port);

    const page = await fetch(`${origin}/slate`, {
      redirect: "manual",
      headers: { accept: "text/html" },
    });
    expect([page.status, page.headers.get("location")]).toEqual([303, "/let-in?to=%2Fslate"]);
    // Under "no-referrer" a browser would send the form with the origin "null" (Fetch standard).
    const door = await fetch(`${origin}/let-in`);
    expect(door.headers.get("referrer-policy")).toBe("same-origin");
    expect(
      (await fetch(`${origin}/verdicts/entries`, { method: "POST", headers: { origin } })).status,
    ).toBe(401);
    expect((await typePassphrase(origin, "four lamps over the key")).status).toBe(403);
    expect(server.seen).toEqual([]);

    const welcome = await typePassphrase(origin, ` ${PHRASE} `);
    expect([welcome.status, welcome.headers.get("location")]).toEqual([303, "/"]);
    const cookie = (welcome.headers.get("set-cookie") ?? "").split(";")[0] ?? "";
    const posted = await fetch(`${origin}/verdicts/entries?day=1`, {
      method: "POST",
      headers: { origin, cookie, "x-forwarded-host": "elsewhere.example" },
      body: "an entry",
    });
    expect(await posted.text()).toBe("the page");
    const [reached] = server.seen;
    expect(reached).toMatchObject({ url: "/verdicts/entries?day=1", body: "an entry" });
    expect(reached?.headers.host).toBe(`127.0.0.1:${server.port}`);
    expect(reached?.headers.origin).toBe(`http://127.0.0.1:${server.port}`);
    expect(reached?.headers["x-forwarded-host"]).toBeUndefined();
    const devices = await listDevices({ db, now: new Date() });
    expect(devices.map(({ device }) => device)).toEqual(["a phone"]);

    // Who asked for a page before is led back there, and never to another host.
    const asked = await fetch(`${origin}/let-in?to=%2Fverdicts%2F2026-03-11`);
    expect(await asked.text()).toContain('action="/let-in?to=%2Fverdicts%2F2026-03-11"');
    for (const [to, leads] of WAYS_BACK) {
      const address = `${origin}/let-in?to=${encodeURIComponent(to)}`;
      const body = new URLSearchParams({ passphrase: PHRASE });
      const headers = { origin };
      const inside = await fetch(address, { method: "POST", redirect: "manual", headers, body });
      expect([to, inside.status, inside.headers.get("location")]).toEqual([to, 303, leads]);
    }

    await sendOut({ db }, {});
    expect((await fetch(`${origin}/slate`, { headers: { cookie } })).status).toBe(401);
  });

  it("refuses a foreign name, a foreign page and a made-up session", async () => {
    const { db } = testContext();
    const server = await behind();
    await setPassphrase({ db }, { next: PHRASE });
    const { origin } = await gate(db, server.port);
    const port = Number(new URL(origin).port);

    const foreign = await fetch(`http://localhost:${port}/let-in`);
    expect(foreign.status).toBe(421);
    expect((await typePassphrase(origin, PHRASE, "http://elsewhere.example")).status).toBe(403);
    const cookie = `noonbook-session=${"a".repeat(43)}`;
    expect((await fetch(`${origin}/slate`, { headers: { cookie } })).status).toBe(401);
    expect(server.seen).toEqual([]);
  });

  it("makes guessing slow, even when all guesses come at once", async () => {
    const { db } = testContext();
    await setPassphrase({ db }, { next: PHRASE });
    const now = new Date("2026-03-11T15:45:00Z");
    const guess = (passphrase: string, at = now): ReturnType<typeof letIn> =>
      letIn({ db, now: at }, { passphrase, device: "" });
    const guesses = await Promise.all(
      ["one", "two", "three", "four", "five"].map((word) => guess(word)),
    );
    const kinds = guesses.map((outcome) => (outcome.ok ? "let in" : outcome.problem.kind));
    expect(kinds.toSorted()).toEqual([
      "wait",
      "wait",
      "wrong-passphrase",
      "wrong-passphrase",
      "wrong-passphrase",
    ]);
    expect(await guess(PHRASE)).toEqual({ ok: false, problem: { kind: "wait", seconds: 2 } });
    expect((await guess(PHRASE, new Date(now.getTime() + 3000))).ok).toBe(true);
  });
});

describe("the passphrase", () => {
  it("is kept as a hash only, and changing it sends every device out", async () => {
    const { db } = testContext();
    expect(await hasPassphrase({ db })).toBe(false);
    await setPassphrase({ db }, { next: PHRASE });
    expect(JSON.stringify(await db.setting.findMany())).not.toContain("lamps");
    const now = new Date();
    const token = await letIn({ db, now }, { passphrase: PHRASE, device: "a phone" });
    if (!token.ok) throw new Error("not let in");
    expect(await isLetIn({ db, now }, token.value)).toBe(true);
    expect(JSON.stringify(await db.session.findMany())).not.toContain(token.value);

    const refusal = await setPassphrase(
      { db },
      { current: "a wrong guess", next: "another long phrase" },
    );
    expect(refusal.ok).toBe(false);
    expect(await isLetIn({ db, now }, token.value)).toBe(true);
    expect((await setPassphrase({ db }, { current: PHRASE, next: "another long phrase" })).ok).toBe(
      true,
    );
    expect(await isLetIn({ db, now }, token.value)).toBe(false);
  });

  it("a session ends after thirty days", async () => {
    const { db } = testContext();
    await setPassphrase({ db }, { next: PHRASE });
    const now = new Date("2026-03-11T07:00:00Z");
    const token = await letIn({ db, now }, { passphrase: PHRASE, device: "" });
    if (!token.ok) throw new Error("not let in");
    expect(await isLetIn({ db, now: new Date("2026-04-10T06:59:00Z") }, token.value)).toBe(true);
    expect(await isLetIn({ db, now: new Date("2026-04-10T07:00:00Z") }, token.value)).toBe(false);
  });
});

describe("the certificate", () => {
  it("is for the addresses asked for, kept while it serves, and encrypts the gate", async () => {
    const folder = mkdtempSync(path.join(tmpdir(), "noonbook-certificate-"));
    onTestFinished(() => {
      rmSync(folder, { recursive: true, force: true });
    });
    const now = new Date();
    const made = await localCertificate(folder, ["127.0.0.1"], now);
    expect(await localCertificate(folder, ["127.0.0.1"], now)).toEqual(made);
    expect(statSync(path.join(folder, "certificate-key.pem")).mode & 0o077).toBe(0);
    const wider = await localCertificate(folder, ["127.0.0.1", "192.168.1.20"], now);
    const read = new X509Certificate(wider.cert);
    expect([read.checkIP("192.168.1.20"), read.checkIP("192.168.1.21")]).toEqual([
      "192.168.1.20",
      undefined,
    ]);
    const late = new Date(now.getTime() + 360 * 86_400_000);
    expect(await localCertificate(folder, ["127.0.0.1"], late)).not.toEqual(wider);

    const { db } = testContext();
    const opened = await openGate({
      db,
      address: "127.0.0.1",
      port: 0,
      behindPort: 1,
      certificate: wider,
    });
    onTestFinished(opened.close);
    const status = await new Promise<number | undefined>((resolve, reject) => {
      const asked = encryptedRequest(`${opened.origin}/let-in`, { ca: wider.cert }, (answer) => {
        answer.resume();
        resolve(answer.statusCode);
      });
      asked.on("error", reject);
      asked.end();
    });
    expect(status).toBe(200);
  });
});
