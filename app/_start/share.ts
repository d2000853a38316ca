/** `npm start -- --share`: asks for the passphrase at first use, then opens the gate at home. */
import { networkInterfaces } from "node:os";
import { createInterface } from "node:readline";
import { Writable } from "node:stream";
import QRCode from "qrcode";
import { homeAddresses, Passphrase } from "#lib/access/index.ts";
import { openDatabase, type Database } from "#lib/db/index.ts";
import { hasPassphrase, setPassphrase } from "#lib/use-cases/set-passphrase.ts";
import { dataFolder, databaseFile } from "../_server/places.ts";
import { fingerprint, localCertificate } from "./certificate.ts";
import { openGate } from "./gate.ts";

const [step, port, isEncrypted] = [
  process.argv[2],
  Number(process.argv[3]),
  process.argv[4] === "https",
];
const db = openDatabase(databaseFile());
if (step === "ask") {
  await askOnce(db);
  await db.$disconnect();
} else {
  await open();
}

async function open(): Promise<void> {
  const addresses = homeAddresses(Object.values(networkInterfaces()).flatMap((one) => one ?? []));
  if (addresses.length === 0) {
    console.error(
      "This computer is in no home network now, so no other device can reach it. Noonbook runs here alone.",
    );
    process.exit(0);
  }
  const certificate = isEncrypted
    ? await localCertificate(dataFolder(), addresses, new Date())
    : undefined;
  for (const address of addresses) {
    const { origin } = await openGate({ db, address, port, behindPort: port, certificate });
    console.log(await QRCode.toString(origin, { type: "terminal", small: true }));
    console.log(`From a phone in the same network: ${origin}`);
  }
  if (certificate) {
    console.log(
      `The certificate was made on this computer and nobody vouches for it: the phone warns once. Go on only if it shows this fingerprint:\n${fingerprint(certificate.cert)}`,
    );
    console.log(
      "Until the phone is told to trust the certificate, pages cannot be opened anew without a connection there; a page that is open goes on working.",
    );
  } else {
    console.log(
      "The connection is not encrypted: use it only in a network you trust, or start with --share --https.",
    );
  }
}

/** Asks for the passphrase when none is set; without a keyboard it says where to set one. */
async function askOnce(database: Database): Promise<void> {
  if (await hasPassphrase({ db: database })) return;
  if (!process.stdin.isTTY) {
    console.error(
      "Sharing needs a passphrase. Start Noonbook without --share, set one in the Series bible under “Phones”, then start with --share again.",
    );
    process.exit(1);
  }
  const answers = hiddenLines();
  for (;;) {
    const typed = Passphrase.safeParse(await answers.ask("A passphrase for phones at home: "));
    if (!typed.success) {
      console.error(typed.error.issues[0]?.message);
      continue;
    }
    const again = await answers.ask("The same again: ");
    if (again.normalize("NFKC").trim() !== typed.data) {
      console.error("The two differ. Once more.");
      continue;
    }
    answers.close();
    const outcome = await setPassphrase({ db: database }, { next: typed.data });
    if (!outcome.ok) console.error("A passphrase was set meanwhile elsewhere. That one holds.");
    return;
  }
}

/** Asks line by line without showing what is typed; a closed keyboard ends the program. */
function hiddenLines(): { ask: (prompt: string) => Promise<string>; close: () => void } {
  const hidden = new Writable({
    write: (_chunk, _encoding, done) => {
      done();
    },
  });
  const reader = createInterface({ input: process.stdin, output: hidden, terminal: true });
  const lines = reader[Symbol.asyncIterator]();
  reader.on("SIGINT", () => process.exit(130));
  return {
    ask: async (prompt) => {
      process.stdout.write(prompt);
      const line: IteratorResult<string, unknown> = await lines.next();
      process.stdout.write("\n");
      if (line.done === true) process.exit(1);
      return line.value;
    },
    close: () => {
      reader.close();
    },
  };
}
