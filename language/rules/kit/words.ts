import type { Reason, Shown, Text } from '../../../calc/figure/figure.ts';
import { text } from '../../../calc/figure/index.ts';

/** Several texts as one, their figures renamed so that none stands for another. */
export function joined(parts: readonly Text[], between = '; '): Text {
  const figures: Record<string, Shown> = {};
  const templates = parts.map((part, i) =>
    part.template.replace(/\{(\w+)\}/g, (whole, name: string) => {
      const value = part.figures[name];
      if (value === undefined) return whole;
      figures[`${name}_${i + 1}`] = value;
      return `{${name}_${i + 1}}`;
    }),
  );
  return text(templates.join(between), figures);
}

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
  const why = joined([...words.slice(0, most), ...more]);
  return { template: `${lead.template}: ${why.template}`, figures: { ...why.figures, ...lead.figures } };
}
