import sharp from "sharp";

const SHEET = { across: 1600, cell: 304, gap: 16, ground: "#f5eddd" } as const;
const SQUARE = { side: 1080, gap: 12 } as const;

type Placed = { readonly left: number; readonly top: number; readonly size: number };

/** A contact sheet of pictures, five a row, as JPEG. At least one picture. */
export async function contactSheet(pictures: readonly Buffer[]): Promise<Buffer> {
  const { across, cell, gap, ground } = SHEET;
  const rows = Math.ceil(pictures.length / 5);
  const places = pictures.map((_, index) => ({
    ...{ left: gap + (index % 5) * (cell + gap), top: gap + Math.floor(index / 5) * (cell + gap) },
    size: cell,
  }));
  return compose(pictures, places, { width: across, height: gap + rows * (cell + gap), ground });
}

/** A square collage for a post: one, four or nine pictures in a grid, the first ones that fill it. */
export async function squareCollage(pictures: readonly Buffer[]): Promise<Buffer> {
  const { side, gap } = SQUARE;
  const across = pictures.length >= 9 ? 3 : pictures.length >= 4 ? 2 : 1;
  const size = Math.floor((side - gap * (across + 1)) / across);
  const places = Array.from({ length: across * across }, (_, index) => ({
    left: gap + (index % across) * (size + gap),
    top: gap + Math.floor(index / across) * (size + gap),
    size,
  }));
  const shown = pictures.slice(0, places.length);
  return compose(shown, places, { width: side, height: side, ground: SHEET.ground });
}

async function compose(
  pictures: readonly Buffer[],
  places: readonly Placed[],
  { width, height, ground }: { width: number; height: number; ground: string },
): Promise<Buffer> {
  const layers = await Promise.all(
    pictures.map(async (picture, index) => {
      const { left, top, size } = places[index] ?? { left: 0, top: 0, size: 1 };
      const input = await sharp(picture).resize(size, size, { fit: "cover" }).toBuffer();
      return { input, left, top };
    }),
  );
  return sharp({ create: { width, height, channels: 3, background: ground } })
    .composite(layers)
    .jpeg({ quality: 86 })
    .toBuffer();
}
