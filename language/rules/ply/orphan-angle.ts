import { text } from '../../../calc/figure/index.ts';
import { layersOf } from '../kit/layers.ts';
import { linesOf } from '../kit/uses.ts';
import { rule } from '../rule.ts';

const inDegrees = (angles: readonly number[]): string =>
  angles
    .map((angle) => Math.round((angle * 180) / Math.PI))
    .map((angle) => (angle > 90 ? angle - 180 : angle))
    .join('/');

export const plyOrphanAngle = rule({
  name: 'ply/orphan-angle',
  severity: 'warning',
  title: 'a mirrored cloth has no mirror image by any turning',
  on: 'recipe',
  check(context) {
    const mirrors = linesOf(context.recipe.stack?.items ?? []).filter((item) => item.kind === 'mirror');
    const told = new Set<string>();
    for (const laid of layersOf(context)) {
      const orphan = laid.mirrored?.orphan;
      if (orphan === undefined || told.has(laid.path)) continue;
      told.add(laid.path);
      const [only] = mirrors;
      context.report({
        at: mirrors.length === 1 && only !== undefined ? only.path : laid.path,
        message: text(
          '{ply} has no mirror image by any turning of the roll: {wanted} deg is wanted, {got} deg is had; what differs twists the part',
          {
            ply: laid.mirrored?.of ?? laid.name,
            wanted: inDegrees(orphan.wanted),
            got: inDegrees(orphan.got),
          },
        ),
        related: [{ at: { entry: context.recipe.entry, path: laid.path }, message: text('the ply that is mirrored') }],
      });
    }
  },
});
