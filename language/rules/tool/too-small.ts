import { layerPiece } from '../../../calc/cloth/area.figure.ts';
import { text } from '../../../calc/figure/index.ts';
import { outlineSize } from '../../../calc/outline/part.figure.ts';
import { SLACK } from '../kit/geometry.ts';
import { factValue, layersOf, valueOf } from '../kit/layers.ts';
import { metres } from '../kit/shown.ts';
import { type RecipeContext, rule } from '../rule.ts';

/** What the part wants of its tool with what runs out to the trim, and what the tool has: m. Undefined where it fits. */
export function pastTool(context: RecipeContext) {
  const { stack } = context.recipe;
  const flat = factValue(stack?.tool === undefined ? undefined : context.bench.tool(stack.tool)?.flat);
  const size = valueOf(context.ask(outlineSize));
  if (flat === undefined || size === undefined) return undefined;
  const past = Math.max(
    0,
    ...layersOf(context).map((laid) =>
      laid.layer.extent.kind === 'to trim' ? (valueOf(context.ask(layerPiece, laid.key))?.past ?? 0) : 0,
    ),
  );
  const [long, short] = [Math.max(size.length, size.width) + 2 * past, Math.min(size.length, size.width) + 2 * past];
  const [longest, shortest] = [Math.max(flat.length.si, flat.width.si), Math.min(flat.length.si, flat.width.si)];
  return long <= longest + SLACK && short <= shortest + SLACK ? undefined : { long, short, longest, shortest };
}

export const toolTooSmall = rule({
  name: 'tool/too-small',
  severity: 'error',
  title: 'the part is larger than its tool',
  on: 'recipe',
  check(context) {
    const { stack } = context.recipe;
    const past = stack === undefined ? undefined : pastTool(context);
    if (stack === undefined || past === undefined) return;
    const { long, short, longest, shortest } = past;
    context.report({
      at: `${stack.path}.tool`,
      message: text('the part needs {long} by {short} with what runs out to the trim; {tool} is {length} by {width}', {
        long: metres(long),
        short: metres(short),
        tool: stack.tool ?? '',
        length: metres(longest),
        width: metres(shortest),
      }),
    });
  },
});
