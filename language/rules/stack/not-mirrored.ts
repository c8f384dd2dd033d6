import { text } from '../../../calc/figure/index.ts';
import { laidStack } from '../../../calc/stack/laid.figure.ts';
import type { LaidLayer } from '../../../calc/stack/laid.ts';
import { layersOf, valueOf } from '../kit/layers.ts';
import { rule } from '../rule.ts';

/** A patch right below the first mirrored layer lies in the middle: it is its own mirror image. */
function inTheMiddle(layers: readonly LaidLayer[], name: string | undefined): boolean {
  const own = layers.find((laid) => laid.name === name);
  if (own?.layer.kind !== 'patch') return false;
  return layers.slice(own.index + 1).find(({ layer }) => layer.kind !== 'patch')?.mirrored !== undefined;
}

export const stackNotMirrored = rule({
  name: 'stack/not-mirrored',
  severity: 'warning',
  title: 'a mirror leaves something out',
  on: 'recipe',
  check(context) {
    const problems = valueOf(context.ask(laidStack))?.problems ?? [];
    if (problems.length === 0) return;
    const layers = layersOf(context);
    for (const at of new Set(problems.map(({ path }) => path))) {
      const here = problems.filter(({ path }) => path === at);
      const lineOf = (name: string | undefined) => layers.find((laid) => laid.name === name)?.path;
      const leftOut = (kind: 'patch-not-mirrored' | 'layers-after-about') => {
        const names = here.flatMap((problem) =>
          problem.kind === kind && !inTheMiddle(layers, problem.name) ? (problem.name ?? []) : [],
        );
        const lines = new Set(names.flatMap((name) => lineOf(name) ?? []));
        return {
          names: names.join(', '),
          related: [...lines].map((path) => ({
            at: { entry: context.recipe.entry, path },
            message: text('left out here'),
          })),
        };
      };
      const [patches, above] = [leftOut('patch-not-mirrored'), leftOut('layers-after-about')];
      if (here.some(({ kind }) => kind === 'mirror-of-nothing'))
        context.report({
          at,
          message: text('nothing is mirrored: no ply and no strip lies below it, and a wrapped ply is not mirrored'),
        });
      if (patches.names !== '')
        context.report({
          at,
          message: text(
            'patches are not mirrored: {patches} lies on one side only; write its twin as a line of its own, or lay it after the mirror',
            { patches: patches.names },
          ),
          related: patches.related,
        });
      if (above.names !== '')
        context.report({
          at,
          message: text(
            '{above} lies over the middle already and is not mirrored: the layer that the mirror turns about is the last before it',
            { above: above.names },
          ),
          related: above.related,
        });
    }
  },
});
