"use client";

import { useEffect, useState, type FormEvent } from "react";
import type { PhotoView } from "#lib/use-cases/photos/photos.ts";
import { removePhotoAction } from "./actions.ts";
import type { PhotoEntry, Waiting } from "./entries.ts";
import styles from "./verdicts.module.css";

const BYTES_MOST = 20 * 1024 * 1024;

/** The photos of a lunch: take or choose one, look, take back; and those that wait on this phone. */
export function PhotoShelf({
  monday,
  photos,
  waiting,
  onTake,
}: {
  readonly monday: string;
  readonly photos: readonly PhotoView[];
  readonly waiting: readonly Waiting<PhotoEntry>[];
  readonly onTake: (photo: { readonly file: Blob; readonly keepOriginal: boolean }) => void;
}) {
  const [status, setStatus] = useState("");
  const [gone, setGone] = useState<ReadonlySet<string>>(new Set());
  const shown = photos.filter(({ id }) => !gone.has(id));
  const take = (event: FormEvent<HTMLFormElement>): void => {
    event.preventDefault();
    const form = event.currentTarget;
    const given = new FormData(form);
    const file = given.get("photo");
    if (!(file instanceof File) || file.size === 0) setStatus("Choose a photo first.");
    else if (file.size > BYTES_MOST) setStatus("This file is over 20 MB. Send a smaller one.");
    else {
      onTake({ file, keepOriginal: given.get("keepOriginal") === "on" });
      form.reset();
      setStatus("");
    }
  };
  const remove = async (id: string): Promise<void> => {
    const state = await removePhotoAction(id).catch(() => undefined);
    if (state?.kind === "saved") setGone((held) => new Set([...held, id]));
    setStatus(
      state?.kind === "saved"
        ? "Removed."
        : "Noonbook did not answer, so the photo is still there. Remove it when you are back.",
    );
  };
  return (
    <section className={`sheet ${styles.facts}`} aria-labelledby="photos">
      <h2 id="photos">Photos</h2>
      {shown.length + waiting.length > 0 && (
        <ul className={styles.photos}>
          {shown.map(({ id, file, thumb }, index) => (
            <li key={id}>
              <a href={`/photos/${file}`}>
                {/* eslint-disable-next-line @next/next/no-img-element -- thumbnails are made at the size they are shown */}
                <img src={`/photos/${thumb}`} alt={`Photo ${index + 1} of this lunch`} />
              </a>
              <button className="btn plain slim" type="button" onClick={() => void remove(id)}>
                Remove<span className="sr"> photo {index + 1}</span>
              </button>
            </li>
          ))}
          {waiting.map(({ entry, problem }, index) => (
            <li key={entry.id}>
              <Held file={entry.file} name={`Photo ${shown.length + index + 1}, on this phone`} />
              <span className="small quiet">
                {problem === undefined ? "waits to be sent" : "not kept"}
              </span>
            </li>
          ))}
        </ul>
      )}
      <form className={styles.facts} onSubmit={take}>
        <label>
          Take or choose a photo
          <input className="field" type="file" name="photo" accept="image/*" required />
        </label>
        <label className={styles.tick}>
          <input type="checkbox" name="keepOriginal" /> Keep the file as it came too, with the place
          and time in it
        </label>
        <p className="small quiet">
          What is kept is a new, upright copy with no place, device or time in it. Look for street
          signs, school badges and faces before you post.
        </p>
        <div className="row">
          <button className="btn plain" type="submit">
            Keep the photo
          </button>
          <span role="status">{status}</span>
        </div>
      </form>
      {shown.length > 0 && (
        <p className="row">
          <a href={`/photos/week/${monday}`}>The week’s contact sheet</a>
          <a href={`/photos/week/${monday}?shape=square`}>A square for a post</a>
        </p>
      )}
    </section>
  );
}

/** A photo that is only on this phone, opened from there. */
function Held({ file, name }: { readonly file: Blob; readonly name: string }) {
  const [address, setAddress] = useState<string>();
  useEffect(() => {
    const made = URL.createObjectURL(file);
    queueMicrotask(() => {
      setAddress(made);
    });
    return () => {
      URL.revokeObjectURL(made);
    };
  }, [file]);
  if (address === undefined) return null;
  return (
    <a href={address} target="_blank" rel="noreferrer">
      {/* eslint-disable-next-line @next/next/no-img-element -- it is on this phone */}
      <img src={address} alt={name} />
    </a>
  );
}
