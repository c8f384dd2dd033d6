import { text } from '../../../calc/figure/figure.ts';
import { subject } from '../../../calc/plan/reading.ts';
import { sheetOf } from '../kit/sheets.ts';
import { metres } from '../kit/shown.ts';
import { lengthOrMore } from '../kit/written.ts';
import { rule } from '../rule.ts';

export const breatherNoPath = rule({
  name: 'breather/no-path',
  severity: 'warning',
  title: 'the breather does not reach out to the port',
  on: 'recipe',
  check(context) {
    const breather = sheetOf(context, 'breather');
    if (breather?.clause === undefined) return;
    const film = ['perforated', 'peel']
      .flatMap((verb) => sheetOf(context, verb) ?? [])
      .reduce((most, { past }) => Math.max(most, past), 0);
    if (breather.past > film + 1e-9) return;
    // beyond what is wet, where the port can sit on it
    const right = `${lengthOrMore(0.08, film + 0.03)} past edge`;
    const shown = {
      breather: subject(breather.step) ?? 'the breather',
      past: metres(Math.abs(breather.past)),
      film: metres(film),
    };
    context.report({
      at: breather.clause.path,
      message:
        breather.past < 0
          ? text('{breather} ends {past} short of the edge: the port has no way to it that stays open', shown)
          : text(
              '{breather} runs {past} past the edge, no farther than the film and the peel ply ({film}): the port sits on wet resin and blocks',
              shown,
            ),
      fixes: [context.edit.replace('Let it run out to the port', breather.clause.path, right)],
    });
  },
});
