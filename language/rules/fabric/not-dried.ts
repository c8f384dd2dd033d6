import { text } from '../../../calc/figure/index.ts';
import type { Amount, Step } from '../../../calc/model/index.ts';
import { allSaid, amountOf, hasWord, head, typedTime } from '../../../calc/plan/reading.ts';
import { TEMPERATURE } from '../../../calc/quantity/index.ts';
import { isCloth } from '../../../calc/stack/order.ts';
import { factValue, layersOf, materialOf, onePerLine } from '../kit/layers.ts';
import { addStep } from '../kit/missing-step.ts';
import { asTyped } from '../kit/shown.ts';
import { stepsOf } from '../kit/steps.ts';
import { type RecipeContext, rule } from '../rule.ts';

interface Drying {
  readonly time: Amount;
  readonly temperature?: Amount;
}

/** As near counts: what is warmer may be shorter, what is longer may be cooler. */
const NEAR = { time: 0.02, temperature: 5 };

export const fabricNotDried = rule({
  name: 'fabric/not-dried',
  severity: 'warning',
  title: 'a cloth that must be dried is laid as it is',
  on: 'recipe',
  check(context) {
    const told = new Set<string>();
    for (const laid of onePerLine(layersOf(context).filter(isCloth))) {
      const dry = factValue(materialOf(context, laid)?.dry);
      const name = laid.layer.material;
      if (dry === undefined || name === undefined || told.has(name) || stepsOf(context).length === 0) continue;
      const drying = stepsOf(context).filter(
        ({ step }) => step.verb === 'dry' && hasWord(head(step), name, laid.name, laid.layer.name),
      );
      if (drying.length > 0) {
        for (const { step } of drying) reportShort(context, step, name, dry);
        told.add(name);
        continue;
      }
      told.add(name);
      context.report({
        at: `${laid.path}.material`,
        message: text('{material} draws water from the air and is dried first, {time}; no step dries {layer}', {
          material: name,
          time: dry.time,
          layer: laid.name,
        }),
        fixes: [addStep(context, 'dry', lineOf(name, dry))],
      });
    }
  },
});

const lineOf = (name: string, { time, temperature }: Drying): string =>
  `dry ${name}, ${asTyped(time)}${temperature === undefined ? '' : ` at ${asTyped(temperature)}`}`;

/** Drying that the recipe says itself, shorter or cooler than the cloth wants it. */
function reportShort(context: RecipeContext, step: Step, name: string, wants: Drying): void {
  // one that says no time takes that of the cloth
  const time = typedTime(step)?.amount;
  const temperature = amountOf(allSaid(step), TEMPERATURE);
  if (time === undefined) return;
  const warmer =
    temperature === undefined || wants.temperature === undefined ? 0 : temperature.si - wants.temperature.si;
  const more = time.si / wants.time.si - 1;
  const short = more < -NEAR.time && warmer <= NEAR.temperature;
  const cool = warmer < -NEAR.temperature && more <= NEAR.time;
  if (!short && !cool) return;
  const line = lineOf(name, wants);
  context.report({
    at: step.path,
    message:
      temperature === undefined || wants.temperature === undefined
        ? text(
            '{material} gets {typed} of drying and wants {time}: the water that stays in it boils out under the bag',
            {
              material: name,
              typed: time,
              time: wants.time,
            },
          )
        : text(
            '{material} gets {typed} at {cool} and wants {time} at {warm}: the water that stays in it boils out under the bag',
            { material: name, typed: time, cool: temperature, time: wants.time, warm: wants.temperature },
          ),
    fixes: [context.edit.replace(text('Write {what}', { what: line }), step.path, line)],
  });
}
