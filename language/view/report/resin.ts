import { isKnown, quantity } from '../../../calc/figure/figure.ts';
import { formatQuantity, MASS, VOLUME } from '../../../calc/quantity/index.ts';
import type { Report } from '../../../calc/report.ts';
import { figureOf, showFigure } from '../figures.ts';
import { say, show } from '../text.ts';
import { thingWords } from '../thing-words.ts';
import type { Section, Telling } from './section.ts';

/** A balance shows grams, whatever the units of the reader: every digit that it shows is told. */
const weighed = (mass: number, { style }: Telling): string =>
  formatQuantity(quantity(mass, MASS), {
    unit: 'g',
    digits: 8,
    ...(style.locale === undefined ? {} : { locale: style.locale }),
  });

/** What to weigh into the pot, resin by resin, to the step of the balance. */
export function resinSection({ resins }: Report, telling: Telling): Section {
  const rows = resins.flatMap(({ name, figures, split }) => {
    if (!isKnown(split)) return [[name, say('all'), '?', say('the mix cannot be told')]];
    const batches = figureOf(figures, 'batches');
    const count = batches !== undefined && isKnown(batches.figure) ? batches.figure.value : 1;
    const batch = showFigure(figureOf(figures, 'batch_mass'), telling.style);
    const note =
      count <= 1
        ? ''
        : batch === undefined
          ? say('in {count} batches', { count })
          : say('in {count} batches of {batch} at most', { count, batch });
    return split.value.parts.map(({ what, mass, volume }, i) => [
      i === 0 ? name : '',
      thingWords(what),
      weighed(mass, telling),
      [
        ...(volume === undefined ? [] : [show(quantity(volume, VOLUME), telling.style)]),
        ...(i === 0 && note !== '' ? [note] : []),
      ].join(', '),
    ]);
  });
  return {
    title: say('To mix for one part'),
    lead: say('What to weigh, in steps of the balance; pigment and filler included.'),
    table: { head: [say('resin'), say('part'), say('weigh'), ''], right: [2], rows },
  };
}
