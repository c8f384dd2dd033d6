import { isKnown, quantity } from '../../../calc/figure/figure.ts';
import { ANGLE, LENGTH } from '../../../calc/quantity/index.ts';
import type { Report } from '../../../calc/report.ts';
import type { StackProblem } from '../../../calc/stack/laid.ts';
import { layerFigureNames } from '../figure-names.ts';
import { figureOf, showFigure } from '../figures.ts';
import { show } from '../text.ts';
import { type Section, type Telling, withPlace } from './section.ts';

const columns = [
  'layer_area',
  'layer_thickness',
  'layer_dry_mass',
  'layer_resin',
  'layer_mass',
  'layer_share',
  'layer_cost',
];

/** The stack, layer by layer. */
export function layerSection({ layers }: Report, { style }: Telling): Section {
  const rows = layers.map(({ laid, figures }) => [
    laid.name,
    laid.layer.material ?? '',
    ...columns.map((name) => showFigure(figureOf(figures, name), style, layerFigureNames[name]?.percent) ?? '?'),
  ]);
  return {
    title: 'Layers',
    lead: 'From the tool face outwards; a ? cannot be told, see below.',
    table: {
      head: ['layer', 'material', 'area', 'thickness', 'dry', 'resin', 'wet', 'share', 'cost'],
      right: [2, 3, 4, 5, 6, 7, 8],
      rows,
    },
  };
}

/** What to cut. */
export function pieceSection({ layers }: Report, { style }: Telling): Section {
  const rows = layers.flatMap(({ laid, piece }) => {
    if (piece === undefined || !isKnown(piece)) return [];
    const { length, width, past, lanes } = piece.value;
    const angle = laid.angle === undefined ? '' : show(quantity(laid.angle, ANGLE), style);
    const more = [
      ...(laid.turnedOver ? ['turned over'] : []),
      ...(past > 0
        ? [`${show(quantity(past, LENGTH), style)} past the edge`]
        : past < 0
          ? [`${show(quantity(-past, LENGTH), style)} short of the edge`]
          : []),
      ...(lanes === undefined || lanes.lanes < 2 ? [] : [`in ${lanes.lanes} lanes`]),
    ];
    return [
      [
        laid.name,
        laid.layer.material ?? '',
        angle,
        show(quantity(length, LENGTH), style),
        show(quantity(width, LENGTH), style),
        more.join(', '),
      ],
    ];
  });
  return {
    title: 'Pieces to cut',
    lead: 'Length along the part by width across it, before any dart or hole.',
    table: { head: ['layer', 'material', 'angle', 'length', 'width', ''], right: [2, 3, 4], rows },
  };
}

const problemWords: Readonly<Record<StackProblem['kind'], (problem: StackProblem) => string>> = {
  'too-many-layers': ({ count }) => `the stack would have ${count ?? 'too many'} layers: they are not worked out`,
  'bad-repeat': ({ count }) => `a repeat is made a whole number of times${count === undefined ? '' : `, not ${count}`}`,
  'mirror-of-nothing': () => 'there is nothing below to mirror',
  'about-unknown': ({ name }) => `no layer is called ${name ?? '?'}: the mirror has nothing to turn about`,
  'layers-after-about': ({ name }) => `layers lie over ${name ?? 'the middle layer'} already: they are not mirrored`,
  'patch-not-mirrored': ({ name }) => `the patch ${name ?? ''} is not mirrored`.replace('  ', ' '),
};

export function stackProblemSection({ problems }: Report, telling: Telling): Section {
  return {
    title: 'The stack',
    lead: 'What does not work out in it.',
    lines: problems.map((problem) =>
      withPlace(problemWords[problem.kind](problem), { entry: telling.recipe, path: problem.path }, telling),
    ),
  };
}
