/** One marker segment of a JPEG file. */
export type Segment = { readonly marker: number; readonly body: Buffer };

/**
 * The marker segments before the picture's own data, read straight from the bytes: ITU-T T.81 (1992),
 * Annex B.1.1 (markers) and B.2.1 (order). Independent of the library that wrote them.
 */
export function jpegSegments(file: Buffer): Segment[] {
  if (file.readUInt16BE(0) !== 0xffd8) throw new Error("No start of image.");
  const segments: Segment[] = [];
  let at = 2;
  while (at < file.length) {
    const marker = file.readUInt16BE(at);
    const length = file.readUInt16BE(at + 2);
    segments.push({ marker, body: file.subarray(at + 4, at + 2 + length) });
    if (marker === 0xffda) return segments;
    at += 2 + length;
  }
  throw new Error("No scan.");
}

/** Tag numbers of the first directory of an Exif body, and of its GPS directory (Exif 2.32, §4.6.2–4.6.6). */
export function exifTags(body: Buffer): { main: number[]; gps: number[] } {
  const tiff = body.subarray(6);
  const little = tiff.toString("latin1", 0, 2) === "II";
  const u16 = (at: number): number => (little ? tiff.readUInt16LE(at) : tiff.readUInt16BE(at));
  const u32 = (at: number): number => (little ? tiff.readUInt32LE(at) : tiff.readUInt32BE(at));
  const entries = (at: number): { tag: number; value: number }[] =>
    Array.from({ length: u16(at) }, (_, index) => ({
      tag: u16(at + 2 + index * 12),
      value: u32(at + 2 + index * 12 + 8),
    }));
  const main = entries(u32(4));
  const gps = main.find(({ tag }) => tag === 0x8825);
  return {
    main: main.map(({ tag }) => tag),
    gps: gps ? entries(gps.value).map(({ tag }) => tag) : [],
  };
}
