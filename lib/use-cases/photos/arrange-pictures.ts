import sharp from "sharp";

const SHEET = { across: 1600, cell: 304, gap: 16, ground: "#f5eddd" } as const;
const SQUARE = { side: 1080, gap: 12, most: 9 } as const;

type Placed = {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
};

/** A contact sheet of pictures, five a row, as JPEG. At least one picture. */
export async function contactSheet(pictures: readonly Buffer[]): Promise<Buffer> {
  const { across, cell, gap, ground } = SHEET;
  const rows = Math.ceil(pictures.length / 5);
  const places = pictures.map((_, index) => ({
    ...{ left: gap + (index % 5) * (cell + gap), top: gap + Math.floor(index / 5) * (cell + gap) },
    ...{ width: cell, height: cell },
  }));
  return compose(pictures, places, { width: across, height: gap + rows * (cell + gap), ground });
}

/** A square collage for a post: the first nine pictures at most, in rows that fill it, as JPEG. */
export async function squareCollage(pictures: readonly Buffer[]): Promise<Buffer> {
  const { side, most } = SQUARE;
  const shown = pictures.slice(0, most);
  return compose(shown, squarePlaces(shown.length), {
    ...{ width: side, height: side, ground: SHEET.ground },
  });
}

/** As many rows as make a square, the shorter ones on top, each as wide as the square. */
function squarePlaces(count: number): Placed[] {
  const { side, gap } = SQUARE;
  const rows = Math.ceil(Math.sqrt(count));
  const height = Math.floor((side - gap * (rows + 1)) / rows);
  return Array.from({ length: rows }, (_, row) => {
    const across = Math.floor((count + row) / rows);
    const width = Math.floor((side - gap * (across + 1)) / across);
    return Array.from({ length: across }, (__, column) => ({
      ...{ left: gap + column * (width + gap), top: gap + row * (height + gap), width, height },
    }));
  }).flat();
}

const NOWHERE: Placed = { left: 0, top: 0, width: 1, height: 1 };

async function compose(
  pictures: readonly Buffer[],
  places: readonly Placed[],
  { width, height, ground }: { width: number; height: number; ground: string },
): Promise<Buffer> {
  const layers = await Promise.all(
    pictures.map(async (picture, index) => {
      const { left, top, width: across, height: down } = places[index] ?? NOWHERE;
      const input = await sharp(picture).resize(across, down, { fit: "cover" }).toBuffer();
      return { input, left, top };
    }),
  );
  return sharp({ create: { width, height, channels: 3, background: ground } })
    .composite(layers)
    .jpeg({ quality: 86 })
    .toBuffer();
}
