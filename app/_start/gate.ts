/** The gate: what other devices at home reach. It lets known devices through to the server on the loopback. */
import {
  createServer,
  request as forward,
  type IncomingMessage,
  type ServerResponse,
} from "node:http";
import { createServer as createEncryptedServer } from "node:https";
import type { AddressInfo } from "node:net";
import {
  doorFor,
  isFromOwnPage,
  isHomeAddress,
  isOwnHost,
  readSessionCookie,
  sessionCookie,
  wayBack,
} from "#lib/access/index.ts";
import type { Database } from "#lib/db/index.ts";
import { isLetIn, letIn, type LetInProblem } from "#lib/use-cases/let-in.ts";
import { letInPage } from "./let-in-page.ts";

/** Photos of 20 MB pass; more does not. */
const BODY_BYTES_MAX = 25_000_000;
const FORM_BYTES_MAX = 4_096;
export const LET_IN_PATH = "/let-in";

export type Gate = { readonly origin: string; readonly close: () => Promise<void> };
export type GateOptions = {
  readonly db: Database;
  readonly address: string;
  /** 0: any free port. */
  readonly port: number;
  /** The port of the server on the loopback. */
  readonly behindPort: number;
  /** A certificate and its key in PEM; without it the connection is plain. */
  readonly certificate?: { readonly cert: string; readonly key: string } | undefined;
};

/** Opens the gate on one address of the home network. */
export async function openGate(options: GateOptions): Promise<Gate> {
  const isEncrypted = options.certificate !== undefined;
  let own = { address: options.address, port: options.port, origin: "" };
  const answer = (request: IncomingMessage, response: ServerResponse): void => {
    pass({ ...options, isEncrypted, own }, request, response).catch((problem: unknown) => {
      console.error("The gate could not answer:", problem);
      if (response.headersSent) response.destroy();
      else say(response, 500, "Noonbook could not answer. Try again.");
    });
  };
  const server = options.certificate
    ? createEncryptedServer(options.certificate, answer)
    : createServer(answer);
  await new Promise<void>((resolve, reject) => {
    server.once("error", reject);
    server.listen(options.port, options.address, resolve);
  });
  const { port } = server.address() as AddressInfo;
  const origin = `${isEncrypted ? "https" : "http"}://${options.address}:${port}`;
  own = { address: options.address, port, origin };
  const close = (): Promise<void> =>
    new Promise((resolve) => {
      server.close(() => {
        resolve();
      });
      server.closeAllConnections();
    });
  return { origin, close };
}

type Standing = GateOptions & {
  readonly isEncrypted: boolean;
  readonly own: { readonly address: string; readonly port: number; readonly origin: string };
};

async function pass(
  standing: Standing,
  request: IncomingMessage,
  response: ServerResponse,
): Promise<void> {
  const { own, db } = standing;
  if (!isHomeAddress(request.socket.remoteAddress ?? "")) {
    say(response, 403, "Noonbook answers only devices at home.");
  } else if (!isOwnHost(request.headers.host, own.address, own.port)) {
    say(response, 421, `Noonbook answers only at ${own.origin}.`);
  } else if (
    !isFromOwnPage({
      method: request.method,
      origin: request.headers.origin,
      ownOrigin: own.origin,
    })
  ) {
    say(response, 403, "Only Noonbook’s own pages may ask this.");
  } else if (pathOf(request) === LET_IN_PATH) {
    await letInAtTheDoor(standing, request, response);
  } else {
    const token = readSessionCookie(request.headers.cookie);
    if (token !== undefined && (await isLetIn({ db, now: new Date() }, token))) {
      passOn(standing, request, response);
    } else {
      sendToTheDoor(request, response);
    }
  }
}

async function letInAtTheDoor(
  { db, isEncrypted }: Standing,
  request: IncomingMessage,
  response: ServerResponse,
): Promise<void> {
  const back = wayBack(request.url ?? "/");
  if (request.method !== "POST") {
    showPage(response, 200, letInPage(doorFor(back), undefined));
    return;
  }
  const form = new URLSearchParams(await readForm(request));
  const outcome = await letIn(
    { db, now: new Date() },
    {
      passphrase: form.get("passphrase") ?? "",
      device: request.headers["user-agent"] ?? "a device that did not say",
    },
  );
  if (!outcome.ok) {
    showPage(
      response,
      outcome.problem.kind === "wait" ? 429 : 403,
      letInPage(doorFor(back), describe(outcome.problem)),
    );
    return;
  }
  response.writeHead(303, {
    location: back,
    "set-cookie": sessionCookie(outcome.value, isEncrypted),
    "cache-control": "no-store",
  });
  response.end();
}

function describe(problem: LetInProblem): string {
  switch (problem.kind) {
    case "no-passphrase":
      return "No passphrase is set yet. Set one in the Series bible, on the computer that runs Noonbook.";
    case "wrong-passphrase":
      return "That is not the passphrase. Mind capitals and spaces, and try again.";
    case "wait":
      return `Too many tries. Wait ${problem.seconds} ${problem.seconds === 1 ? "second" : "seconds"}, then try again.`;
  }
}

/** A page is sent to the door; anything else, such as an entry of the outbox, is told to wait. */
function sendToTheDoor(request: IncomingMessage, response: ServerResponse): void {
  const wantsPage =
    request.method === "GET" && (request.headers.accept ?? "").includes("text/html");
  if (wantsPage) {
    response.writeHead(303, { location: doorFor(request.url ?? "/"), "cache-control": "no-store" });
    response.end();
  } else {
    say(
      response,
      401,
      "This device is not let in, or not any more. Open Noonbook here and type the passphrase.",
    );
  }
}

/** Hands the request to the server behind, as if it came from this computer. */
function passOn(
  { behindPort, own }: Standing,
  request: IncomingMessage,
  response: ServerResponse,
): void {
  if (Number(request.headers["content-length"] ?? 0) > BODY_BYTES_MAX) {
    say(response, 413, "That is too large. Send at most 25 MB.");
    return;
  }
  const behind = `127.0.0.1:${behindPort}`;
  const kept = Object.entries(request.headers).filter(
    ([name]) => name !== "referer" && !name.startsWith("x-forwarded"),
  );
  const origin = request.headers.origin === own.origin ? { origin: `http://${behind}` } : {};
  const headers = { ...Object.fromEntries(kept), host: behind, ...origin };
  const onward = forward(
    { host: "127.0.0.1", port: behindPort, method: request.method, path: request.url, headers },
    (answer) => {
      response.writeHead(answer.statusCode ?? 502, answer.headers);
      answer.pipe(response);
      answer.on("error", () => response.destroy());
    },
  );
  onward.on("error", () => {
    if (response.headersSent) response.destroy();
    else
      say(
        response,
        502,
        "Noonbook is not running behind this door. Start it again on the computer.",
      );
  });
  response.on("close", () => onward.destroy());
  let received = 0;
  request.on("data", (chunk: Buffer) => {
    received += chunk.length;
    if (received > BODY_BYTES_MAX) request.destroy();
  });
  request.pipe(onward);
}

async function readForm(request: IncomingMessage): Promise<string> {
  const chunks: Buffer[] = [];
  let size = 0;
  for await (const chunk of request as AsyncIterable<Buffer>) {
    size += chunk.length;
    if (size > FORM_BYTES_MAX) return "";
    chunks.push(chunk);
  }
  return Buffer.concat(chunks).toString("utf8");
}

function pathOf(request: IncomingMessage): string {
  return (request.url ?? "/").split("?", 1)[0] ?? "/";
}

function say(response: ServerResponse, status: number, line: string): void {
  response.writeHead(status, {
    "content-type": "text/plain; charset=utf-8",
    "cache-control": "no-store",
  });
  response.end(`${line}\n`);
}

function showPage(response: ServerResponse, status: number, html: string): void {
  response.writeHead(status, {
    "content-type": "text/html; charset=utf-8",
    "cache-control": "no-store",
    "content-security-policy":
      "default-src 'none'; style-src 'unsafe-inline'; form-action 'self'; frame-ancestors 'none'",
    "x-content-type-options": "nosniff",
    // With "no-referrer" a browser sends the form with the origin "null", and the door would refuse its
    // own page (Fetch standard, "append a request Origin header").
    "referrer-policy": "same-origin",
  });
  response.end(html);
}
