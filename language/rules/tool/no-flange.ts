import { text } from '../../../calc/figure/index.ts';
import { outlineSize } from '../../../calc/outline/part.figure.ts';
import { flat, hasWord } from '../../../calc/plan/reading.ts';
import { factValue, valueOf } from '../kit/layers.ts';
import { metres } from '../kit/shown.ts';
import { stepsOf } from '../kit/steps.ts';
import { rule } from '../rule.ts';

/** Flange that tape, vent and brake zone need, m. 100 to 150 mm from memory; `habit flange` of the shop sets its own. */
const usualFlange = 0.08;

export const toolNoFlange = rule({
  name: 'tool/no-flange',
  severity: 'warning',
  title: 'no flange is left for the bag',
  on: 'recipe',
  check(context) {
    const { stack, process } = context.recipe;
    if (stack?.tool === undefined || process?.kind === undefined || process.kind === 'hand') return;
    if (stepsOf(context).some(({ step }) => step.clauses.some((clause) => hasWord(flat(clause), 'envelope')))) return;
    const tool = context.bench.tool(stack.tool);
    const size = valueOf(context.ask(outlineSize));
    const board = factValue(tool?.flat);
    if (size === undefined || (board === undefined && tool?.flange === undefined)) return;
    const wanted = factValue(context.book.shop?.habits?.flange)?.amounts[0]?.si ?? usualFlange;
    const room =
      board === undefined
        ? -Infinity
        : Math.min(
            Math.max(board.length.si, board.width.si) - Math.max(size.length, size.width),
            Math.min(board.length.si, board.width.si) - Math.min(size.length, size.width),
          ) / 2;
    const left = Math.max(room, factValue(tool?.flange)?.si ?? -Infinity);
    // a part that does not fit at all is told of as that
    if ((room < 0 && board !== undefined) || left >= wanted - 1e-6) return;
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
