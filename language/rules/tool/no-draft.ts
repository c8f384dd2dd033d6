import { quantity, text, type Usual } from '../../../calc/figure/index.ts';
import { ANGLE } from '../../../calc/quantity/index.ts';
import { habitOf } from '../kit/habit.ts';
import { factValue } from '../kit/layers.ts';
import { metres } from '../kit/shown.ts';
import { rule } from '../rule.ts';

const angle = (si: number) => quantity(si, ANGLE);

const DEEP: Usual = {
  habit: 'deep_tool',
  what: 'depth from which the sides of a tool want draft',
  value: metres(0.05),
  source: 'common practice',
};
const LEAST: Usual = {
  habit: 'draft',
  what: 'least draft of the sides of a deep tool',
  value: angle(2 * 0.017453292519943295),
  source: 'common practice',
};

export const toolNoDraft = rule({
  name: 'tool/no-draft',
  severity: 'warning',
  title: 'the sides of a deep tool have no draft',
  on: 'recipe',
  check(context) {
    const { stack, part } = context.recipe;
    const tool = stack?.tool === undefined ? undefined : context.bench.tool(stack.tool);
    const leastDraft = habitOf(context.bench, LEAST);
    const deep = habitOf(context.bench, DEEP);
    const [draft, depth] = [factValue(tool?.draft), factValue(tool?.depth)];
    if (
      stack !== undefined &&
      depth !== undefined &&
      draft !== undefined &&
      depth.si > deep + 1e-9 &&
      draft.si < leastDraft - 1e-9
    ) {
      context.report({
        at: `${stack.path}.tool`,
        message: text('{tool} is {depth} deep with {draft} of draft: the part wedges in it; {least} or more', {
          tool: stack.tool ?? '',
          depth,
          draft,
          least: angle(leastDraft),
        }),
      });
    } else if (
      part?.sides !== undefined &&
      draft === undefined &&
      part.sides.height.si > deep + 1e-9 &&
      (part.sides.angle?.si ?? 0) < leastDraft - 1e-9
    ) {
      context.report({
        at: `${part.path}.sides`,
        message: text('sides of {height} stand at {draft}: the part wedges in the tool; {least} of draft or more', {
          height: part.sides.height,
          draft: part.sides.angle ?? angle(0),
          least: angle(leastDraft),
        }),
      });
    }
  },
});
