import { cost } from '../../../calc/cost/cost.figure.ts';
import { currency } from '../../../calc/cost/price.figure.ts';
import { type Figure, ifKnown, isKnown } from '../../../calc/figure/figure.ts';
import { type Bench, quantity } from '../../../calc/figure/index.ts';
import { thickness } from '../../../calc/laminate/laminate.figure.ts';
import { mass } from '../../../calc/laminate/mass.figure.ts';
import { type Dimension, LENGTH, MASS, MONEY } from '../../../calc/quantity/index.ts';
import { resinToMix } from '../../../calc/resin/needs.figure.ts';
import type { ReportPart } from '../../protocol/report.ts';
import type { Part } from '../kept/kept-lines.ts';
import { emptyDigit } from '../kept/mark.ts';
import type { OpenFindings } from '../open-findings.ts';
import { type Style, say, show } from '../text.ts';
import { translated } from '../translation.ts';

/** One of the six lenses above a recipe. */
export interface LensPart extends Part {
  readonly kind: ReportPart | 'findings' | 'plan';
  readonly recipe: string;
  /** characters that it is given */
  readonly width: number;
}

interface Row {
  readonly kind: ReportPart;
  readonly label: string;
  readonly dimension: Dimension;
  /** characters of the figure: as wide as it comes */
  readonly width: Readonly<Record<Style['units'], number>>;
  figure(bench: Bench): Figure<number>;
}

/** In this order, always; a figure that cannot be told keeps its place. */
const rows: readonly Row[] = [
  {
    kind: 'mass',
    label: 'mass',
    dimension: MASS,
    width: { si: 8, us: 8, both: 19 },
    figure: (bench) => bench.ask(mass),
  },
  {
    kind: 'thickness',
    label: 'thickness',
    dimension: LENGTH,
    width: { si: 7, us: 8, both: 18 },
    figure: (bench) => bench.ask(thickness),
  },
  {
    kind: 'resin',
    label: 'resin to mix',
    dimension: MASS,
    width: { si: 8, us: 8, both: 19 },
    figure: (bench) => ifKnown(bench.ask(resinToMix), (resin, reasons) => ({ value: resin.total, reasons })),
  },
  {
    kind: 'cost',
    label: 'cost',
    dimension: MONEY,
    width: { si: 10, us: 10, both: 10 },
    figure: (bench) => bench.ask(cost),
  },
];

/** Findings are counted in three digits: a file tells 300 at most. */
const countWidth = 3;

/** What one part comes to, what stands open, and the way to the plan: six lenses. */
export function lensParts(bench: Bench, open: OpenFindings | undefined, style: Style): LensPart[] {
  const recipe = bench.recipe.name;
  const unit = bench.ask(currency);
  const money = isKnown(unit) ? unit.value : undefined;
  const figures = rows.map(({ kind, label, dimension, width, figure }): LensPart => {
    const found = figure(bench);
    const known = isKnown(found);
    const words = known
      ? show(quantity(found.value, dimension, dimension === MONEY ? money : undefined), style)
      : say('unknown');
    const name = translated(label);
    return { kind, recipe, known, words: `${name} ${words}`, width: name.length + 1 + width[style.units] };
  });
  const label = say('open findings');
  const plan = say('plan');
  const count = open === undefined ? '' : String(open.errors + open.others);
  return [
    ...figures,
    {
      kind: 'findings',
      recipe,
      known: true,
      live: true,
      words: `${label} ${count}`,
      width: label.length + 1 + countWidth,
    },
    { kind: 'plan', recipe, known: true, live: true, words: plan, width: plan.length },
  ];
}

/** A lens as it is shown: the mark of old figures has its place, and so have the digits that a figure may come to have. */
export const lensTitle = ({ words, width }: LensPart, old: boolean): string =>
  `${`${words}${old ? '?' : ''}`.padEnd(width + 1, emptyDigit)}${noSpace}`;

/** Takes no place and is no space: editors cut spaces off the end of a title. */
const noSpace = '\u200b';
