import sharp from "sharp";
import { ok, refuse, type Result } from "#lib/base/index.ts";

/** A picture fit to keep: upright, resized, newly encoded, with nothing in it but the picture. */
export type CleanPicture = {
  readonly full: Buffer;
  readonly thumb: Buffer;
  readonly width: number;
  readonly height: number;
};
export type PictureProblem = { readonly kind: "too-big" | "no-picture" };

/** Bytes of a file that is taken at all. */
const BYTES_MAX = 20 * 1024 * 1024;
/** Pixels a file may unpack to: a small file can claim a wall of them. */
const PIXELS_MAX = 80_000_000;
const FULL_SIDE = 2048;
const THUMB_SIDE = 360;

/**
 * Decodes a picture and encodes it anew as JPEG: turned as its orientation says, at most 2,048 pixels a
 * side, in sRGB, all metadata gone (Exif with place, device and time, XMP, IPTC, comments). Refuses
 * what is over 20 MB or no picture that can be read.
 */
export async function cleanPicture(bytes: Buffer): Promise<Result<CleanPicture, PictureProblem>> {
  if (bytes.length > BYTES_MAX) return refuse({ kind: "too-big" });
  try {
    const { data: full, info } = await sharp(bytes, { limitInputPixels: PIXELS_MAX, pages: 1 })
      .rotate()
      .resize(FULL_SIDE, FULL_SIDE, { fit: "inside", withoutEnlargement: true })
      .flatten({ background: "#ffffff" })
      .toColourspace("srgb")
      .jpeg({ quality: 84 })
      .toBuffer({ resolveWithObject: true });
    const thumb = await sharp(full)
      .resize(THUMB_SIDE, THUMB_SIDE, { fit: "inside" })
      .jpeg({ quality: 78 })
      .toBuffer();
    return ok({ full, thumb, width: info.width, height: info.height });
  } catch {
    return refuse({ kind: "no-picture" });
  }
}

/** Words for a refusal. */
export function describePictureProblem({ kind }: PictureProblem): string {
  return kind === "too-big"
    ? "This file is over 20 MB. Send a smaller one."
    : "This is no picture that can be read here. JPEG, PNG, WebP, AVIF, TIFF and GIF are; a camera that saves HEIF can be set to JPEG.";
}
