import { equivalentTime } from '../../../calc/cure/equivalent.ts';
import { isKnown, text } from '../../../calc/figure/figure.ts';
import { UNKNOWN } from '../../../calc/model/index.ts';
import { curesOf, materialsThatCure } from '../kit/cures.ts';
import { hottestHold, longerHold } from '../kit/longer-hold.ts';
import { aboutTime, kelvin } from '../kit/shown.ts';
import { rule } from '../rule.ts';

export const cureShort = rule({
  name: 'cure/short',
  severity: 'error',
  title: 'the cure is shorter or cooler than the data sheet wants',
  on: 'recipe',
  check(context) {
    const { steps, spans } = curesOf(context);
    const first = steps[0];
    if (first === undefined || !isKnown(spans)) return;
    for (const material of materialsThatCure(context)) {
      if (material.cure === undefined) continue;
      const wanted = material.cure.flatMap((fact) =>
        fact.value === UNKNOWN || fact.value.temperature === undefined
          ? []
          : [{ fact, at: fact.value.temperature, time: fact.value.value }],
      );
      const reached = wanted.map((each) => ({ ...each, does: equivalentTime(spans.value, each.at.si) }));
      // a data sheet with several cures is met by any of them
      if (reached.length === 0 || reached.some(({ does, time }) => typeof does !== 'number' || does >= 0.98 * time.si))
        continue;
      const nearest = reached[0];
      if (nearest === undefined || typeof nearest.does !== 'number') continue;
      const shown = {
        material: material.name,
        does: aboutTime(nearest.does),
        wanted: nearest.time,
        temperature: kelvin(nearest.at.si),
      };
      context.report({
        at: hottestHold(spans.value)?.path ?? first.step.path,
        message: text('the cure does as much as {does} at {temperature}: {material} wants {wanted}', shown),
        related: [{ at: nearest.fact.at, message: text('{material} cures in {wanted} at {temperature}', shown) }],
        fixes: [longerHold(context, spans.value, nearest.time.si - nearest.does, nearest.at.si)],
      });
    }
  },
});
