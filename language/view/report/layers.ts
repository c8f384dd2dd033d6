import { type Figure, isKnown, quantity } from '../../../calc/figure/figure.ts';
import { ANGLE, LENGTH } from '../../../calc/quantity/index.ts';
import type { Report } from '../../../calc/report.ts';
import type { StackProblem } from '../../../calc/stack/laid.ts';
import { layerFigureNames } from '../figure-names.ts';
import { figureOf, showFigure } from '../figures.ts';
import { say, show } from '../text.ts';
import { translated } from '../translation.ts';
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
    title: say('Layers'),
    lead: say('From the tool face outwards; a ? cannot be told, see below.'),
    table: {
      head: ['layer', 'material', 'area', 'thickness', 'dry', 'resin', 'wet', 'share', 'cost'].map(translated),
      right: [2, 3, 4, 5, 6, 7, 8],
      rows,
    },
  };
}

/** Where the tool is curved both ways. */
function excessWords(excess: Figure<number> | undefined, style: Telling['style']): string[] {
  if (excess === undefined || !isKnown(excess)) return [];
  const length = quantity(Math.abs(excess.value), LENGTH);
  return [
    excess.value > 0
      ? say('{length} too much cloth at its edge on the tool', { length }, style)
      : say('{length} too little cloth at its edge on the tool', { length }, style),
  ];
}

/** What to cut. */
export function pieceSection({ layers }: Report, { style }: Telling): Section {
  const rows = layers.flatMap(({ laid, piece, figures }) => {
    if (piece === undefined || !isKnown(piece)) return [];
    const { length, width, past, lanes } = piece.value;
    const angle = laid.angle === undefined ? '' : show(quantity(laid.angle, ANGLE), style);
    const more = [
      ...(laid.turnedOver ? [say('turned over')] : []),
      ...(past > 0
        ? [say('{past} past the edge', { past: quantity(past, LENGTH) }, style)]
        : past < 0
          ? [say('{short} short of the edge', { short: quantity(-past, LENGTH) }, style)]
          : []),
      ...excessWords(figureOf(figures, 'edge_excess')?.figure, style),
      ...(lanes === undefined || lanes.lanes < 2 ? [] : [say('in {lanes} lanes', { lanes: lanes.lanes })]),
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
    title: say('Pieces to cut'),
    lead: say('Length along the part by width across it, before any dart or hole.'),
    table: { head: ['layer', 'material', 'angle', 'length', 'width', ''].map(translated), right: [2, 3, 4], rows },
  };
}

const problemWords: Readonly<Record<StackProblem['kind'], (problem: StackProblem) => string>> = {
  'too-many-layers': ({ count }) =>
    count === undefined
      ? say('the stack would have too many layers: they are not worked out')
      : say('the stack would have {count} layers: they are not worked out', { count }),
  'bad-repeat': ({ count }) =>
    count === undefined
      ? say('a repeat is made a whole number of times')
      : say('a repeat is made a whole number of times, not {count}', { count }),
  'mirror-of-nothing': () => say('there is nothing below to mirror'),
  'about-unknown': ({ name }) =>
    say('no layer is called {name}: the mirror has nothing to turn about', { name: name ?? '?' }),
  'layers-after-about': ({ name }) =>
    say('layers lie over {name} already: they are not mirrored', { name: name ?? 'the middle layer' }),
  'patch-not-mirrored': ({ name }) =>
    name === undefined ? say('the patch is not mirrored') : say('the patch {name} is not mirrored', { name }),
};

export function stackProblemSection({ problems }: Report, telling: Telling): Section {
  return {
    title: say('The stack'),
    lead: say('What does not work out in it.'),
    lines: problems.map((problem) =>
      withPlace(problemWords[problem.kind](problem), { entry: telling.recipe, path: problem.path }, telling),
    ),
  };
}
