import { format } from "date-fns";
import Link from "next/link";
import QRCode from "qrcode";
import { requestContext } from "#app/_server/context.ts";
import { sharedAddresses } from "#app/_server/shared-addresses.ts";
import { PageHead } from "#app/_ui/page-head.tsx";
import { listDevices } from "#lib/use-cases/let-in.ts";
import { hasPassphrase } from "#lib/use-cases/set-passphrase.ts";
import styles from "../bible.module.css";
import { PassphraseForm } from "./passphrase-form.client.tsx";
import { SendOutButton } from "./send-out-button.client.tsx";

export const metadata = { title: "Phones" };

export default async function PhonesPage() {
  const context = await requestContext();
  const [isSet, devices] = [await hasPassphrase(context), await listDevices(context)];
  return (
    <>
      <PageHead kicker="Who may reach Noonbook at home" title="Phones">
        <Link className="btn plain" href="/bible">
          Series bible
        </Link>
      </PageHead>
      <div className={styles.form}>
        <section className="sheet">
          <h2>Open it on the phone</h2>
          <Addresses isSet={isSet} />
        </section>
        <section className="sheet">
          <h2>Passphrase</h2>
          <p>
            {isSet
              ? "A passphrase is set. Changing it sends every device out."
              : "No passphrase is set, so no other device can be let in."}
          </p>
          <PassphraseForm isSet={isSet} />
        </section>
        <section className="sheet">
          <h2>Devices that are let in</h2>
          {devices.length === 0 ? (
            <p className="quiet">None.</p>
          ) : (
            <>
              <ul className={styles.devices}>
                {devices.map(({ id, device, createdAt, seenAt }) => (
                  <li key={id}>
                    <span>
                      {kindOf(device)}
                      <br />
                      <span className="small quiet">
                        let in {format(createdAt, "d MMM, HH:mm")}, last seen{" "}
                        {format(seenAt, "d MMM, HH:mm")}. It calls itself “{device}”.
                      </span>
                    </span>
                    <SendOutButton id={id} label="Send out" />
                  </li>
                ))}
              </ul>
              <SendOutButton label="Send all of them out" />
            </>
          )}
        </section>
      </div>
    </>
  );
}

/** Browsers of phones say “Mobi” of themselves (common practice, no source). */
function kindOf(device: string): string {
  return device.includes("Mobi") ? "A phone" : "A tablet or computer";
}

async function Addresses({ isSet }: { readonly isSet: boolean }) {
  const addresses = sharedAddresses();
  if (addresses.length === 0) {
    return (
      <p>
        Noonbook answers this computer alone now.{" "}
        {isSet ? "To" : "Set a passphrase below; then, to"} reach it from a phone in the same home
        network, start it with <code>npm start -- --share</code>, or with{" "}
        <code>npm start -- --share --https</code> for an encrypted connection. The phone warns once
        about the certificate, because it was made on this computer and nobody vouches for it; until
        the phone is told to trust it, pages cannot be opened anew without a connection.
      </p>
    );
  }
  const pictures = await Promise.all(addresses.map((one) => QRCode.toDataURL(one, { margin: 2 })));
  return (
    <ul className={styles.devices}>
      {addresses.map((address, index) => (
        <li key={address}>
          <span>
            <strong>{address}</strong>
            <br />
            <span className="small quiet">Point the phone’s camera at the square.</span>
          </span>
          {/* A picture made on the spot: there is nothing to optimise. */}
          {/* eslint-disable-next-line @next/next/no-img-element -- a data address */}
          <img src={pictures[index]} width={180} height={180} alt={`QR code of ${address}`} />
        </li>
      ))}
    </ul>
  );
}
