/** Writes a whole recipe from a few answers: its mould, its part, its stack, its steps. Names only what the stock library has. */
import type { Outline, RecipeAnswers } from './choices.ts';
import { type Laid, stepsOf } from './steps.ts';
import { words as english, type Words } from './words.ts';

const mm = (metres: number): number => Math.round(metres * 1000);

const outlines: Readonly<Record<Outline['kind'], (length: number, width: number) => string>> = {
  rectangle: (length, width) => `rectangle ${length} mm by ${width} mm`,
  rounded: (length, width) =>
    `rounded ${length} mm by ${width} mm corner ${Math.round(Math.min(length, width) / 6)} mm`,
  circle: (length) => `circle ${length} mm`,
  ellipse: (length, width) => `ellipse ${length} mm by ${width} mm`,
  capsule: (length, width) => `capsule ${length} mm by ${width} mm`,
};

/** A title from the name: `side_hatch` is `Side hatch`. */
const titleOf = (name: string): string => {
  const words = name.replaceAll('_', ' ').trim();
  return words.charAt(0).toUpperCase() + words.slice(1);
};

/** Twice as much room beside the part as the bag, the vent and the tape take. */
const room = 300;
const roundUp = (length: number): number => Math.ceil(length / 100) * 100;

function mould(tool: string, title: string, length: number, width: number, hot: boolean): readonly string[] {
  return [
    `tool ${tool} "${title}" {`,
    `  flat ${roundUp(length + room)} mm by ${roundUp(width + room)} mm`,
    '  flange 110 mm',
    `  limit ${hot ? 180 : 70} degC`,
    ...(hot ? ['  expands 23e-6 /K'] : []),
    '  count 1',
    '}',
  ];
}

/** The core between the skins; toes are chamfered so that the upper skin follows, cut cells are let through where resin runs. */
function coreLine({ process, core }: RecipeAnswers, inset: number): readonly string[] {
  if (core === undefined) return [];
  const holes = process === 'infusion' ? ', perforate 2 mm every 40 mm' : '';
  const bedded = process === 'hand' ? ', bedded core_bedding_paste' : '';
  return [`core body ${core.material} ${mm(core.thickness)} mm, inset ${inset} mm, chamfer 20 deg${holes}${bedded}`];
}

const indented = (lines: readonly string[], by: number): string[] => lines.map((line) => `${' '.repeat(by)}${line}`);

/** The text of a file with one recipe, ready to be checked; lengths of the answers in metres. */
export function newRecipe(answers: RecipeAnswers, words: Words = english): string {
  const { name, process, outline, fabric, core } = answers;
  const title = titleOf(name);
  const tool = `${name}_mould`;
  const [length, width] = [mm(outline.length), mm(outline.kind === 'circle' ? outline.length : outline.width)];
  const cored = core !== undefined;
  const laid: Laid = {
    tool,
    fabric,
    feed: Math.max(10, Math.round((Math.max(length, width) / 2 - 100) / 10) * 10),
    first: process === 'hand' ? ['skin', 'outer'] : ['outer_1', 'outer_2'],
    second: process === 'hand' ? ['inner', 'close'] : ['inner_1', 'inner_2'],
    cored,
    carbon: fabric.startsWith('carbon'),
  };
  const plies =
    process === 'hand'
      ? [
          'coat gel gelcoat_brush 500 um wet, brush, 2 coats',
          'ply skin csm_300, to trim',
          `ply outer ${fabric} at 0 deg, to trim`,
          ...coreLine(answers, 40),
          `ply inner ${fabric} at 0 deg, to trim`,
          'ply close csm_300, to trim',
        ]
      : [
          `ply outer_1 ${fabric} at 0 deg, to trim`,
          `ply outer_2 ${fabric} at 45 deg, to trim`,
          ...coreLine(answers, 40),
          `ply inner_1 ${fabric} at 45 deg, to trim`,
          `ply inner_2 ${fabric} at 0 deg, to trim`,
        ];
  return `${[
    'notation 1',
    '',
    `// ${words.written}`,
    `// ${words.writtenOn}`,
    '',
    ...mould(tool, words.mould.replace('{title}', title), length, width, process === 'prepreg'),
    '',
    `recipe ${name} "${title}" {`,
    '  revision 1',
    '  quantity 1',
    '',
    '  part {',
    `    outline ${outlines[outline.kind](length, width)}`,
    '    trim allowance 25 mm',
    '    edge square',
    '  }',
    '',
    `  stack from tool ${tool} {`,
    ...indented(plies, 4),
    '  }',
    '',
    ...indented(stepsOf[process](laid, words), 2),
    '}',
  ].join('\n')}\n`;
}
