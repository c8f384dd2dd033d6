import { isKnown, text } from '../../../calc/figure/figure.ts';
import { UNKNOWN } from '../../../calc/model/index.ts';
import { subject } from '../../../calc/plan/reading.ts';
import { laidStack } from '../../../calc/stack/laid.figure.ts';
import { sheetOf } from '../kit/sheets.ts';
import { asTyped, metres } from '../kit/shown.ts';
import { rule } from '../rule.ts';

export const peelShort = rule({
  name: 'peel/short',
  severity: 'warning',
  title: 'the peel ply does not cover the laminate',
  on: 'recipe',
  check(context) {
    const peel = sheetOf(context, 'peel');
    if (peel?.clause === undefined) return;
    const mesh = sheetOf(context, 'mesh');
    const stack = context.ask(laidStack);
    if (!isKnown(stack)) return;
    // mesh that lies on bare laminate is reported by mesh/beyond-peel
    if (mesh !== undefined && mesh.past > peel.past) return;
    const allowance = context.recipe.part?.trimAllowance;
    const toTrim = stack.value.layers.some(({ layer }) => layer.extent.kind === 'to trim');
    const reach = toTrim && allowance !== undefined && allowance !== UNKNOWN ? allowance.si : 0;
    if (peel.past >= reach - 1e-9) return;
    const right = asTyped(metres(reach + 0.03));
    const shown = {
      peel: subject(peel.step) ?? 'the peel ply',
      past: metres(Math.abs(peel.past)),
      reach: metres(reach),
    };
    context.report({
      at: peel.clause.path,
      message:
        peel.past < 0
          ? text(
              '{peel} ends {past} short of the edge: what lies above it is cured to the strip that is left bare',
              shown,
            )
          : text(
              '{peel} runs {past} past the edge, the cloth {reach}: what lies above is cured to the strip that is left bare',
              shown,
            ),
      fixes: [
        context.edit.replace(
          text('Let it run {what} past the edge', { what: right }),
          peel.clause.path,
          `${right} past edge`,
        ),
      ],
    });
  },
});
