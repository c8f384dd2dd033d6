import { text } from '../../../calc/figure/figure.ts';
import { allSaid, hasWord, subject } from '../../../calc/plan/reading.ts';
import { isSemiPermanent } from '../kit/release-kind.ts';
import { allOf, stepsOf } from '../kit/steps.ts';
import { rule } from '../rule.ts';

export const releaseWithGelcoat = rule({
  name: 'release/with-gelcoat',
  severity: 'info',
  title: 'a sprayed gelcoat on a semi-permanent release',
  on: 'recipe',
  check(context) {
    const steps = stepsOf(context);
    const coats = allOf(steps, 'lay coat');
    if (coats.length === 0) return;
    const release = allOf(steps, 'release').find(({ step }) =>
      isSemiPermanent(context.bench.material(subject(step) ?? '')),
    );
    const sprayed = coats.find(({ step, layers }) =>
      layers.some(
        ({ layer }) =>
          layer.kind === 'coat' &&
          context.bench.material(layer.material ?? '')?.kind === 'gelcoat' &&
          (layer.applied === 'spray' || hasWord(allSaid(step), 'spray')),
      ),
    );
    if (release === undefined || sprayed === undefined) return;
    const shown = { release: subject(release.step) ?? '', gelcoat: sprayed.layers[0]?.name ?? 'the gelcoat' };
    context.report({
      at: release.step.path,
      message: text(
        '{gelcoat} is sprayed on {release}: on a slick face gelcoat pulls into fish-eyes, or lets go too soon; try it on a corner first',
        shown,
      ),
      related: [
        {
          at: { entry: context.recipe.entry, path: sprayed.step.path },
          message: text('{gelcoat} is sprayed here', shown),
        },
      ],
    });
  },
});
