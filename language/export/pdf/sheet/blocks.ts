import type { Drawing } from '../../../../calc/drawing/drawing.ts';
import { type Doc, pt } from '../document.ts';
import { fontOf, type Weight } from '../fonts.ts';
import { fittingScale, paintDrawing } from '../paint.ts';
import { runsLeftwards, setLines, widthOf, writeRuns } from '../set-line.ts';
import { lengthInPoints, spelled } from '../words.ts';

/** Something that has a height at a width and can be painted there; mm from the upper left corner of the page. */
export interface Block {
  height(width: number): number;
  paint(x: number, y: number, width: number): void;
}

const mm = (points: number): number => (points * 25.4) / 72;

export interface Letters {
  /** points */
  readonly size: number;
  readonly weight?: Weight;
  readonly align?: 'left' | 'right' | 'center';
}

/** Words that flow over as many lines as they need. */
export function words(doc: Doc, text: string, { size, weight = 'regular', align = 'left' }: Letters): Block {
  const line = spelled(doc, text);
  if (runsLeftwards(line)) return bothWays(doc, line, { size, weight, align });
  const options = (width: number) => ({ width: pt(width), align, lineGap: size * 0.12 });
  const set = () => doc.font(fontOf(doc, weight)).fontSize(size);
  // a block is asked again and again by those that hold it
  const heights = new Map<number, number>();
  const height = (width: number): number => {
    const known = heights.get(width) ?? mm(set().heightOfString(line === '' ? ' ' : line, options(width)));
    heights.set(width, known);
    return known;
  };
  return {
    height,
    paint: (x, y, width) => {
      // with a height of its own no text begins a page by itself
      set()
        .fillColor('black')
        .text(line, pt(x), pt(y), { ...options(width), height: pt(height(width) + size) });
    },
  };
}

/** Words of which some run from right to left: the library sets lines of one direction only. */
function bothWays(doc: Doc, text: string, { size, weight = 'regular', align = 'left' }: Letters): Block {
  const set = () => doc.font(fontOf(doc, weight)).fontSize(size);
  const known = new Map<number, ReturnType<typeof setLines>>();
  const linesAt = (width: number): ReturnType<typeof setLines> => {
    const lines = known.get(width) ?? setLines(set(), text, pt(width));
    known.set(width, lines);
    return lines;
  };
  const step = (): number => set().currentLineHeight(true) + size * 0.12;
  const shift = { left: 0, center: 0.5, right: 1 }[align];
  return {
    height: (width) => mm(linesAt(width).length * step()),
    paint: (x, y, width) => {
      for (const [i, runs] of linesAt(width).entries()) {
        set().fillColor('black');
        const left = pt(x) + shift * (pt(width) - widthOf(doc, runs));
        writeRuns(doc, runs, left, pt(y) + i * step());
      }
    },
  };
}

/** Length of words on one line, mm. */
export function lengthOfWords(doc: Doc, text: string, { size, weight = 'regular' }: Letters): number {
  doc.font(fontOf(doc, weight)).fontSize(size);
  return mm(lengthInPoints(doc, spelled(doc, text)));
}

export const gap = (height: number): Block => ({ height: () => height, paint: () => undefined });

/** Blocks under each other. */
export function stacked(blocks: readonly Block[], between = 1): Block {
  const real = blocks.filter((block) => block.height(100) > 0);
  return {
    height: (width) =>
      real.reduce((sum, block) => sum + block.height(width), 0) + between * Math.max(0, real.length - 1),
    paint: (x, y, width) => {
      let at = y;
      for (const block of real) {
        block.paint(x, at, width);
        at += block.height(width) + between;
      }
    },
  };
}

/** A block with a line round it, `line` mm wide. */
export function framed(doc: Doc, block: Block, line: number, pad = 1.5): Block {
  const inside = (width: number): number => width - 2 * pad;
  return {
    height: (width) => block.height(inside(width)) + 2 * pad,
    paint: (x, y, width) => {
      const height = block.height(inside(width)) + 2 * pad;
      doc.undash().lineWidth(pt(line)).strokeColor('black').lineJoin('miter');
      doc.rect(pt(x), pt(y), pt(width), pt(height)).stroke();
      block.paint(x + pad, y + pad, inside(width));
    },
  };
}

/** A block with a bar along its left side: what the recipe notes. */
export function barred(doc: Doc, block: Block, bar = 1): Block {
  const room = bar + 1.5;
  return {
    height: (width) => block.height(width - room),
    paint: (x, y, width) => {
      doc
        .rect(pt(x), pt(y), pt(bar), pt(block.height(width - room)))
        .fillColor('black')
        .fill();
      block.paint(x + room, y, width - room);
    },
  };
}

/** Blocks side by side, each in its share of the width. */
export function besides(parts: readonly { readonly block: Block; readonly share: number }[], between = 3): Block {
  const whole = parts.reduce((sum, { share }) => sum + share, 0);
  const widthOf = (width: number, share: number): number => ((width - between * (parts.length - 1)) * share) / whole;
  return {
    height: (width) => Math.max(0, ...parts.map(({ block, share }) => block.height(widthOf(width, share)))),
    paint: (x, y, width) => {
      let at = x;
      for (const { block, share } of parts) {
        block.paint(at, y, widthOf(width, share));
        at += widthOf(width, share) + between;
      }
    },
  };
}

/** A drawing as large as its box takes. */
export function drawn(doc: Doc, drawing: Drawing, most: number): Block {
  const sizeAt = (width: number) => {
    const scale = fittingScale(drawing, { x: 0, y: 0, width, height: most });
    return { scale, height: Math.min(most, (drawing.high.y - drawing.low.y) * 1000 * scale + 1) };
  };
  return {
    height: (width) => sizeAt(width).height,
    paint: (x, y, width) => {
      const { scale, height } = sizeAt(width);
      paintDrawing(doc, drawing, { x, y, width, height }, { scale, leastLetters: 2.1 });
    },
  };
}

/** A square to tick, `size` mm wide. */
export function tickBox(doc: Doc, size: number): Block {
  return {
    height: () => size,
    paint: (x, y) => {
      doc.undash().lineWidth(pt(0.5)).strokeColor('black').lineJoin('miter');
      doc.rect(pt(x), pt(y), pt(size), pt(size)).stroke();
    },
  };
}
