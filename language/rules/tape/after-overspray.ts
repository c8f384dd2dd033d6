import { text } from '../../../calc/figure/figure.ts';
import { allSaid, hasWord, subject } from '../../../calc/plan/reading.ts';
import { layersOf } from '../kit/layers.ts';
import { allOf, between, firstOf, stepsOf, type WorkedStep } from '../kit/steps.ts';
import { rule } from '../rule.ts';

export const tapeAfterOverspray = rule({
  name: 'tape/after-overspray',
  severity: 'warning',
  title: 'sealant tape meets a sprayed coat on the flange',
  on: 'recipe',
  check(context) {
    const steps = stepsOf(context);
    const tape = firstOf(steps, 'tape');
    if (tape === undefined) return;
    const coat = allOf(steps, 'lay coat').find(
      ({ step, layers }) => layers.some(({ layer }) => layer.applied === 'spray') || hasWord(allSaid(step), 'spray'),
    );
    if (coat === undefined || firstOf(steps, 'mask') !== undefined) return;
    const coatFirst = steps.indexOf(coat) < steps.indexOf(tape);
    const layers = layersOf(context);
    // who sands the coat itself has not cleaned the flange
    const ofLayer = ({ step }: WorkedStep): boolean => layers.some(({ name }) => name === subject(step));
    if (coatFirst && allOf(between(steps, coat, tape), 'clean', 'wipe', 'sand').some((each) => !ofLayer(each))) return;
    const shown = { coat: coat.layers[0]?.name ?? 'the coat' };
    context.report({
      at: tape.step.path,
      message: coatFirst
        ? text(
            'the tape goes on the overspray of {coat}: it does not hold there; mask the flange before the coat',
            shown,
          )
        : text(
            '{coat} is sprayed over the tape: nothing holds on its overspray; mask the flange, tape after the coat',
            shown,
          ),
      related: [
        { at: { entry: context.recipe.entry, path: coat.step.path }, message: text('{coat} is sprayed here', shown) },
      ],
      fixes: coatFirst
        ? [
            context.edit.together(
              'Mask the flange',
              context.edit.lineBefore('', coat.step.path, 'mask flange'),
              context.edit.lineBefore('', tape.step.path, 'unmask flange'),
            ),
          ]
        : [],
    });
  },
});
