import { text, type Usual } from '../../../calc/figure/index.ts';
import { outlineSize } from '../../../calc/outline/part.figure.ts';
import { flat, hasWord } from '../../../calc/plan/reading.ts';
import { habitOf } from '../kit/habit.ts';
import { factValue, valueOf } from '../kit/layers.ts';
import { metres } from '../kit/shown.ts';
import { stepsOf } from '../kit/steps.ts';
import { rule } from '../rule.ts';
import { pastTool } from './too-small.ts';

/** Flange that tape, vent and brake zone need. */
const FLANGE: Usual = {
  habit: 'flange',
  what: 'flange for tape, vent and brake',
  value: metres(0.08),
  source: '80 to 150 mm, from memory',
};

export const toolNoFlange = rule({
  name: 'tool/no-flange',
  severity: 'warning',
  title: 'no flange is left for the bag',
  on: 'recipe',
  check(context) {
    const { stack, process } = context.recipe;
    if (stack?.tool === undefined || process?.kind === undefined || process.kind === 'hand') return;
    const tool = context.bench.tool(stack.tool);
    const size = valueOf(context.ask(outlineSize));
    const board = factValue(tool?.flat);
    if (size === undefined || (board === undefined && tool?.flange === undefined)) return;
    const wanted = habitOf(context.bench, FLANGE);
    const room =
      board === undefined
        ? -Infinity
        : Math.min(
            Math.max(board.length.si, board.width.si) - Math.max(size.length, size.width),
            Math.min(board.length.si, board.width.si) - Math.min(size.length, size.width),
          ) / 2;
    const left = Math.max(room, factValue(tool?.flange)?.si ?? -Infinity);
    // a part that does not fit at all is told of as that
    if (left >= wanted - 1e-6 || pastTool(context) !== undefined) return;
    if (stepsOf(context).some(({ step }) => step.clauses.some((clause) => hasWord(flat(clause), 'envelope')))) return;
    context.report({
      at: `${stack.path}.tool`,
      message: text('{tool} leaves {left} round the part for tape, vent and brake; {wanted} or more', {
        tool: stack.tool,
        left: metres(Math.max(0, left)),
        wanted: metres(wanted),
      }),
    });
  },
});
