import { text } from '../../../calc/figure/index.ts';
import type { LaidLayer } from '../../../calc/stack/laid.ts';
import { layersOf, ofKind, onePerLine } from '../kit/layers.ts';
import { rule } from '../rule.ts';

/** A skin is a ply; strips and patches lie on one place only. */
const isSkin = ({ layer }: LaidLayer): boolean => layer.kind === 'ply';

export const stackCoreWithoutSkin = rule({
  name: 'stack/core-without-skin',
  severity: 'error',
  title: 'a core has no ply on one of its faces',
  on: 'recipe',
  check(context) {
    const layers = layersOf(context);
    for (const core of onePerLine(ofKind(layers, 'core'))) {
      const below = layers.slice(0, core.index).findLast(isSkin);
      const above = layers.slice(core.index + 1).find(isSkin);
      if (below !== undefined && above !== undefined) continue;
      const skin = below ?? above;
      const cloth = skin?.layer.material;
      const figures = { core: core.name, face: below === undefined ? 'tool side' : 'bag side' };
      context.report({
        at: core.path,
        message:
          skin === undefined
            ? text('{core} has no ply on either side: a bare core breaks at the first load and drinks water', figures)
            : text('{core} has no ply on its {face}: with one skin alone it carries little and drinks water', figures),
        fixes:
          cloth === undefined || skin?.layer.name === 'inner'
            ? []
            : [
                below === undefined
                  ? context.edit.lineBefore('Add a ply below it', core.path, `ply inner ${cloth}${direction(skin)}`)
                  : context.edit.lineAfter('Add a ply over it', core.path, `ply inner ${cloth}${direction(skin)}`),
              ],
      });
    }
  },
});

/** As the other skin lies. */
const direction = (skin: LaidLayer | undefined): string =>
  skin?.layer.angle === undefined ? ', net' : ` at ${Math.round((skin.layer.angle.si * 180) / Math.PI)} deg, net`;
