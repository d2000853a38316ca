"use client";

import { useRouter } from "next/navigation";
import { useState, type FormEvent } from "react";
import type { PhotoView } from "#lib/use-cases/photos/photos.ts";
import { removePhotoAction } from "./actions.ts";
import styles from "./verdicts.module.css";

/** The photos of a lunch: take or choose one, look, take back. */
export function PhotoShelf({
  lunchId,
  monday,
  photos,
}: {
  readonly lunchId: string;
  readonly monday: string;
  readonly photos: readonly PhotoView[];
}) {
  const router = useRouter();
  const [status, setStatus] = useState("");
  const send = async (event: FormEvent<HTMLFormElement>): Promise<void> => {
    event.preventDefault();
    const form = event.currentTarget;
    setStatus("Keeping the photo …");
    const response = await fetch("/verdicts/photos", {
      method: "POST",
      body: new FormData(form),
    }).catch(() => undefined);
    if (response?.ok) {
      form.reset();
      setStatus("Kept.");
      router.refresh();
    } else {
      const said = (await response?.json().catch(() => undefined)) as
        { message?: string } | undefined;
      setStatus(
        said?.message ??
          "Noonbook did not answer. The photo is still on your phone: send it later.",
      );
    }
  };
  return (
    <section className={`sheet ${styles.facts}`} aria-labelledby="photos">
      <h2 id="photos">Photos</h2>
      {photos.length > 0 && (
        <ul className={styles.photos}>
          {photos.map(({ id, file, thumb }, index) => (
            <li key={id}>
              <a href={`/photos/${file}`}>
                {/* Our own small file: nothing for an image service to do. */}
                {/* eslint-disable-next-line @next/next/no-img-element -- thumbnails are made at the size they are shown */}
                <img src={`/photos/${thumb}`} alt={`Photo ${index + 1} of this lunch`} />
              </a>
              <button
                className="btn plain slim"
                type="button"
                onClick={() => void removePhotoAction(id).then(() => setStatus("Removed."))}
              >
                Remove<span className="sr"> photo {index + 1}</span>
              </button>
            </li>
          ))}
        </ul>
      )}
      <form className={styles.facts} onSubmit={(event) => void send(event)}>
        <input type="hidden" name="lunchId" value={lunchId} />
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
      {photos.length > 0 && (
        <p className="row">
          <a href={`/photos/week/${monday}`}>The week’s contact sheet</a>
          <a href={`/photos/week/${monday}?shape=square`}>A square for a post</a>
        </p>
      )}
    </section>
  );
}
