import type { Origin, Reason } from '../../calc/figure/figure.ts';
import type { Place } from '../../calc/model/index.ts';
import { type Style, sayText } from './text.ts';

/** One statement of a chain of reasons, with those that it rests on. */
export interface Said {
  readonly words: string;
  readonly from: Origin;
  readonly source?: string;
  readonly at?: Place;
  readonly reasons: readonly Said[];
}

/** How much of a chain is told. */
export interface Depth {
  /** statements under statements; 1 tells the first alone */
  readonly deepest: number;
  /** statements in all */
  readonly most: number;
}

/**
 * A chain of reasons as it is told: each statement once, where it comes first from the top, so that a part that all layers rest on
 * does not stand under each of them again; statements without words hand over those that they rest on.
 */
export function saidReasons(reasons: readonly Reason[], style: Style, { deepest, most }: Depth): Said[] {
  const told = new Set<string>();
  const seen = new Set<Reason>();
  // Breadth first, so that what is left out when there are too many is what lies deepest.
  interface Open {
    readonly reasons: readonly Reason[];
    readonly into: Said[];
    readonly depth: number;
  }
  const top: Said[] = [];
  let level: Open[] = [{ reasons, into: top, depth: 1 }];
  while (level.length > 0) {
    const next: Open[] = [];
    for (const { reasons: list, into, depth } of level) {
      const waiting = [...list];
      for (let reason = waiting.shift(); reason !== undefined; reason = waiting.shift()) {
        if (seen.has(reason)) continue;
        seen.add(reason);
        const words = sayText(reason.text, style);
        const key = `${words}\n${reason.at?.entry ?? ''}\n${reason.at?.path ?? ''}`;
        if (words === '') waiting.unshift(...(reason.reasons ?? []));
        if (words === '' || told.has(key)) continue;
        if (told.size >= most) return top;
        told.add(key);
        const under: Said[] = [];
        into.push({
          words,
          from: reason.from,
          ...(reason.source === undefined ? {} : { source: reason.source }),
          ...(reason.at === undefined ? {} : { at: reason.at }),
          reasons: under,
        });
        if (depth < deepest && reason.reasons !== undefined)
          next.push({ reasons: reason.reasons, into: under, depth: depth + 1 });
      }
    }
    level = next;
  }
  return top;
}

/** The first statement of a chain: how the figure itself was come by. */
export function firstReason(reasons: readonly Reason[], style: Style): string | undefined {
  return saidReasons(reasons, style, { deepest: 1, most: 1 })[0]?.words;
}
