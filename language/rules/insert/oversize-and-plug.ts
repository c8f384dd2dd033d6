import { text, type Usual } from '../../../calc/figure/index.ts';
import { NUMBER } from '../../../calc/quantity/index.ts';
import { drilledIn } from '../kit/drilled.ts';
import { habitOf } from '../kit/habit.ts';
import { typedLength } from '../kit/layers.ts';
import { mendText, TYPED_LENGTH } from '../kit/mend-text.ts';
import { metres } from '../kit/shown.ts';
import { rule } from '../rule.ts';

/** A hole in bare core is drilled larger first by this, or to so many diameters, whichever is more. */
const MORE: Usual = {
  habit: 'oversize',
  what: 'how much larger a hole through bare core is drilled first',
  value: metres(0.004),
  source: 'common practice',
};
const TIMES: Usual = {
  habit: 'oversize_times',
  what: 'diameters to which such a hole is drilled first',
  value: { si: 1.5, dimension: NUMBER },
  source: 'common practice',
};

export const insertOversizeAndPlug = rule({
  name: 'insert/oversize-and-plug',
  severity: 'warning',
  title: 'a bolt hole goes through bare core',
  on: 'recipe',
  check(context) {
    for (const { step, into, diameter } of drilledIn(context)) {
      if (into.layer.kind !== 'core') continue;
      const wanted = Math.max(diameter + habitOf(context.bench, MORE), habitOf(context.bench, TIMES) * diameter);
      const clause = step.clauses.find(({ word }) => word === 'oversize');
      const typed = clause?.arguments.find((argument) => argument.kind === 'amount');
      const first = typed?.kind === 'amount' ? typed.amount.si : undefined;
      if (first !== undefined && first >= wanted - 1e-6) continue;
      context.report({
        at: clause?.path ?? step.path,
        message:
          first === undefined
            ? text(
                'holes of {diameter} go through the bare core {core}: drill {wanted}, fill, and drill again to size, or give them an insert',
                { diameter: metres(diameter), core: into.name, wanted: metres(wanted) },
              )
            : text('drilled {first} first, holes of {diameter} in {core} keep too thin a wall: {wanted} or more', {
                first: metres(first),
                diameter: metres(diameter),
                core: into.name,
                wanted: metres(wanted),
              }),
        related: [{ at: { entry: context.recipe.entry, path: into.path }, message: text('the core') }],
        fixes: [
          clause === undefined
            ? context.edit.addClause(
                'Drill oversize and fill',
                step.path,
                `oversize ${typedLength(wanted)} then fill epoxy_fillet`,
              )
            : mendText(
                context,
                text('Write {what}', { what: `oversize ${typedLength(wanted)}` }),
                clause.path,
                TYPED_LENGTH,
                typedLength(wanted),
              ),
        ],
      });
    }
  },
});
