import type { Reason, Shown, Text } from '../../../calc/figure/figure.ts';
import { text } from '../../../calc/figure/index.ts';

/** A text with others behind it: `cannot be told: ...`, the first few of them and how many more there are. */
export function withReasons(lead: Text, reasons: readonly Reason[], most = 3): Text {
  const seen = new Set<string>();
  const words = reasons
    .map((reason) => reason.text)
    .filter((each) => {
      const key = JSON.stringify(each);
      return seen.has(key) ? false : seen.add(key) !== undefined;
    });
  if (words.length === 0) return lead;
  const more = words.length > most ? [text('and {more} more', { more: words.length - most })] : [];
  const why = [...words.slice(0, most), ...more].reduceRight<Shown | undefined>(
    (others, one) => (others === undefined ? one : text('{one}; {others}', { one, others })),
    undefined,
  );
  return text('{what}: {why}', { ...lead.figures, what: lead, why: why ?? '' });
}
