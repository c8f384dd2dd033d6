// Pictures of an editor have few colours: with a palette of some dozens they take a quarter of the room (ISO/IEC 15948, 11.2.2 and 11.2.3).
import { crc32, deflateSync } from 'node:zlib';
import { createCanvas, loadImage } from '@napi-rs/canvas';

const most = 48;

/** Halves the box of colours with the widest spread at its median until there are as many as the palette holds (Heckbert, 1982). */
function paletteOf(counts) {
  const boxes = [[...counts]];
  const spread = (box) =>
    [16, 8, 0].map((shift) => {
      const values = box.map(([colour]) => (colour >> shift) & 255);
      return { shift, wide: Math.max(...values) - Math.min(...values) };
    });
  while (boxes.length < most) {
    const wide = boxes.map((box) =>
      box.length < 2 ? { wide: 0 } : spread(box).reduce((a, b) => (b.wide > a.wide ? b : a)),
    );
    const at = wide.reduce((best, each, i) => (each.wide > wide[best].wide ? i : best), 0);
    if (wide[at].wide === 0) break;
    const { shift } = wide[at];
    const box = boxes[at].sort(([a], [b]) => ((a >> shift) & 255) - ((b >> shift) & 255));
    boxes.splice(at, 1, box.slice(0, box.length >> 1), box.slice(box.length >> 1));
  }
  // The colour that most of a box has stays as it is: backgrounds and letters do not change.
  return boxes.map((box) => box.reduce((best, each) => (each[1] > best[1] ? each : best))[0]);
}

const away = (a, b) =>
  ((a >> 16) - (b >> 16)) ** 2 + (((a >> 8) & 255) - ((b >> 8) & 255)) ** 2 + ((a & 255) - (b & 255)) ** 2;

function chunk(type, data) {
  const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
  const frame = Buffer.alloc(8);
  frame.writeUInt32BE(data.length, 0);
  frame.writeUInt32BE(crc32(body), 4);
  return Buffer.concat([frame.subarray(0, 4), body, frame.subarray(4)]);
}

/** The same picture with a palette; without transparency. */
export async function smallPng(bytes) {
  const image = await loadImage(bytes);
  const { width, height } = image;
  const context = createCanvas(width, height).getContext('2d');
  context.drawImage(image, 0, 0);
  const { data } = context.getImageData(0, 0, width, height);
  const colours = new Uint32Array(width * height);
  const counts = new Map();
  for (let i = 0; i < colours.length; i++) {
    const colour = (data[4 * i] << 16) | (data[4 * i + 1] << 8) | data[4 * i + 2];
    colours[i] = colour;
    counts.set(colour, (counts.get(colour) ?? 0) + 1);
  }
  const palette = paletteOf(counts);
  const indexOf = new Map(
    [...counts.keys()].map((colour) => [
      colour,
      palette.reduce((best, each, i) => (away(each, colour) < away(palette[best], colour) ? i : best), 0),
    ]),
  );
  const rows = Buffer.alloc(height * (width + 1));
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) rows[y * (width + 1) + 1 + x] = indexOf.get(colours[y * width + x]);
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([8, 3, 0, 0, 0], 8);
  return Buffer.concat([
    Buffer.from('\x89PNG\r\n\x1a\n', 'latin1'),
    chunk('IHDR', header),
    chunk('PLTE', Buffer.from(palette.flatMap((colour) => [colour >> 16, (colour >> 8) & 255, colour & 255]))),
    chunk('IDAT', deflateSync(rows, { level: 9 })),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}
