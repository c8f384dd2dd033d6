import { isKnown, quantity } from '../../../calc/figure/figure.ts';
import type { Bench } from '../../../calc/figure/index.ts';
import { layerDryMass } from '../../../calc/laminate/mass.figure.ts';
import { ANGLE, LENGTH, MASS } from '../../../calc/quantity/index.ts';
import type { LayerRow, Report } from '../../../calc/report.ts';
import type { LaidLayer } from '../../../calc/stack/laid.ts';
import type { Table } from '../report/section.ts';
import { type Style, say, show } from '../text.ts';
import type { CutRow } from './sheet.ts';

export const cutHead = (): string[] => [
  say('piece'),
  say('material'),
  say('how many'),
  say('length'),
  say('width'),
  say('angle'),
  say('mind'),
];

/** What to cut, a line a piece. */
export function cutRows({ layers, quantity: parts }: Report, style: Style): CutRow[] {
  return layers.flatMap((row) => {
    if (row.piece === undefined || !isKnown(row.piece)) return [];
    const { length, width } = row.piece.value;
    const { laid } = row;
    return [
      {
        cells: [
          laid.name,
          laid.layer.material ?? '',
          parts === 1 ? '1' : say('1 ({parts} in all)', { parts }),
          show(quantity(length, LENGTH), style),
          show(quantity(width, LENGTH), style),
          angleOf(laid, style),
          remarksOf(row, style).join(', '),
        ],
      },
    ];
  });
}

/** Dry pieces with what each must weigh: a piece of the wrong cloth is found on the balance. */
export function weighTable({ layers }: Report, bench: Bench, style: Style): Table {
  const rows = layers.flatMap(({ laid }) => {
    const dry = bench.ask(layerDryMass, laid.key);
    if (!isKnown(dry) || !(dry.value > 0)) return [];
    return [[laid.name, laid.layer.material ?? '', show(quantity(dry.value, MASS), style), '']];
  });
  return { head: [say('piece'), say('material'), say('dry, in the part'), say('as weighed')], right: [2], rows };
}

/** The layers that a step lays, in the order they go down. */
export function layTable(layers: readonly LaidLayer[], style: Style): Table | undefined {
  if (layers.length === 0) return undefined;
  const rows = layers.map((laid) => [
    laid.name,
    laid.layer.material ?? '',
    angleOf(laid, style),
    [...turnsOf(laid, style), ...(laid.layer.notes ?? [])].join(', '),
    '',
  ]);
  return { head: [say('lay'), say('material'), say('angle'), say('mind'), say('done')], right: [], rows };
}

const angleOf = ({ angle }: LaidLayer, style: Style): string =>
  angle === undefined ? '' : show(quantity(angle, ANGLE), style);

/** How a piece lies: the roll's upper side, quarter turns, and the turn of a mirrored piece. */
function turnsOf(laid: LaidLayer, style: Style): string[] {
  const { layer, mirrored, turnedOver } = laid;
  return [
    ...(turnedOver ? [say('turned over')] : []),
    ...(layer.faceDown ? [say('face down')] : []),
    ...(layer.turned === undefined ? [] : [say('turned {angle}', { angle: layer.turned }, style)]),
    ...(mirrored === undefined
      ? []
      : [
          mirrored.turn === 0
            ? say('mirrors {of}', { of: mirrored.of })
            : say('mirrors {of}: a turn of {turn}', { of: mirrored.of, turn: quantity(mirrored.turn, ANGLE) }, style),
        ]),
    ...(layer.joins ?? []).map((join) => (join.kind === 'butt' ? say('butt join') : say('lap join'))),
  ];
}

function remarksOf({ laid, wrap, darts, piece }: LayerRow, style: Style): string[] {
  const length = (si: number) => quantity(si, LENGTH);
  const lanes = piece !== undefined && isKnown(piece) ? piece.value.lanes : undefined;
  const need = darts !== undefined && isKnown(darts) ? darts.value : undefined;
  const wrapped = wrap !== undefined && isKnown(wrap) ? wrap.value : undefined;
  return [
    ...turnsOf(laid, style),
    ...(wrapped === undefined
      ? []
      : [
          say(
            '{reach} past the outline, lands {landing} on {onto}',
            { reach: length(wrapped.reach), landing: length(wrapped.landing), onto: wrapped.onto },
            style,
          ),
        ]),
    ...(need === undefined || need.darts + need.slits === 0
      ? []
      : [
          say(
            '{darts} darts {width} wide, {depth} deep',
            {
              darts: need.typed?.darts ?? need.darts,
              width: length(need.typed?.width ?? need.width),
              depth: length(need.depth),
            },
            style,
          ),
        ]),
    ...(lanes === undefined || lanes.lanes < 2 ? [] : [say('joined of {lanes} lanes', { lanes: lanes.lanes })]),
  ];
}
