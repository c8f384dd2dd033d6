import { isKnown, text } from '../../../calc/figure/figure.ts';
import { type Usual, usual } from '../../../calc/figure/index.ts';
import { layerArealWeight } from '../../../calc/laminate/fraction.figure.ts';
import { arealWeight } from '../kit/shown.ts';
import { stepsOf, type WorkedStep } from '../kit/steps.ts';
import { familyOf, hasStyrene, wettedLayers } from '../kit/wetted.ts';
import { rule } from '../rule.ts';

/** Glass that is laid in one go, before what lies has cooled. */
const SESSION: Usual = {
  habit: 'session',
  what: 'glass laid wet on wet',
  value: arealWeight(1.8),
  source: 'common practice: 4 mm or 1800 g/m2 of glass; a mould guide: let each layer cool',
};

export const resinTooMuchWetOnWet = rule({
  name: 'resin/too-much-wet-on-wet',
  severity: 'warning',
  title: 'too much polyester laminate wet on wet',
  on: 'recipe',
  check(context) {
    const most = usual(context.bench, SESSION);
    if (!isKnown(most) || context.recipe.process?.kind === 'infusion') return;
    const wetted = wettedLayers(context);
    let session: { readonly worked: WorkedStep; readonly weight: number }[] = [];
    const close = (): void => {
      const sum = session.reduce((all, { weight }) => all + weight, 0);
      const last = session.at(-1);
      const first = session[0];
      if (last !== undefined && first !== undefined && sum > most.value + 1e-6) {
        const shown = { sum: arealWeight(sum), most: arealWeight(most.value) };
        context.report({
          at: last.worked.step.path,
          message: text(
            '{sum} of glass wet on wet: over {most} it heats, warps and turns white; let it cool in between',
            shown,
          ),
          related:
            first.worked === last.worked
              ? []
              : [
                  {
                    at: { entry: context.recipe.entry, path: first.worked.step.path },
                    message: text('the session begins here'),
                  },
                ],
          fixes:
            first.worked === last.worked
              ? []
              : [context.edit.lineBefore('Let it cool first', last.worked.step.path, 'wait until cool')],
        });
      }
      session = [];
    };
    for (const worked of stepsOf(context)) {
      if (['wait', 'cure', 'hold', 'keep'].includes(worked.step.verb)) close();
      const plies = wetted.filter(
        (each) => each.worked === worked && each.laid.layer.kind === 'ply' && hasStyrene(familyOf(context, each.resin)),
      );
      const weights = plies.map(({ laid }) => context.ask(layerArealWeight, laid.key));
      const weight = weights.reduce((sum, each) => (isKnown(each) ? sum + each.value : sum), 0);
      if (weight > 0) session.push({ worked, weight });
    }
    close();
  },
});
