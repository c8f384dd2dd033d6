import { COMPARED, type Compared, change, comparedFigures } from '../../../calc/compare/compare.ts';
import { withMaterial } from '../../../calc/compare/with-material.ts';
import { isCannot, isKnown } from '../../../calc/figure/figure.ts';
import type { Material } from '../../../calc/model/index.ts';
import type { Shelf } from '../../analysis/shelf.ts';
import type { ComparedFigure, RecipeChange } from '../../protocol/look-up.ts';
import type { Finding } from '../../rules/finding.ts';
import { firstReason } from '../reasons.ts';
import { type Style, say, show } from '../text.ts';
import type { PlacedRecipe } from './asked.ts';

type Told = Readonly<Record<ComparedFigure, string>>;

const cannotTell = (): string => say('cannot tell');

export function told(figures: Compared, style: Style): Told {
  return each((name) => {
    const figure = figures[name];
    return isKnown(figure) ? show(figure.value, style) : cannotTell();
  });
}

/** What a recipe would come to with another material; nothing is edited. */
export function changeWith(
  { recipe }: PlacedRecipe,
  from: string,
  to: Material,
  shelf: Shelf,
  style: Style,
  newFindings: readonly string[],
): RecipeChange {
  const before = comparedFigures(recipe, shelf);
  const after = comparedFigures(withMaterial(recipe, from, to.name), shelf);
  const reasons = COMPARED.map((name) => after[name]).flatMap((figure) => (isCannot(figure) ? figure.because : []));
  const missing = firstReason(reasons, style);
  return {
    recipe: recipe.name,
    changes: each((name) => {
      const by = change(before[name], after[name]);
      if (!isKnown(by)) return cannotTell();
      return signed(by.value.si, show({ ...by.value, si: Math.abs(by.value.si) }, style), magnitude(before, name));
    }),
    figures: told(after, style),
    newFindings,
    ...(missing === undefined ? {} : { missing }),
  };
}

function each(of: (name: ComparedFigure) => string): Told {
  return { mass: of('mass'), cost: of('cost'), thickness: of('thickness') };
}

const magnitude = (figures: Compared, name: ComparedFigure): number => {
  const figure = figures[name];
  return isKnown(figure) ? Math.abs(figure.value.si) : 0;
};

/** What is left of rounding is no change. */
const NOTHING = 1e-9;

const signed = (by: number, shown: string, whole: number): string =>
  Math.abs(by) <= NOTHING * whole ? say('the same') : `${by > 0 ? '+' : '\u2212'}${shown}`;

/** Rules that find more errors and warnings than before, each once, errors first. */
export function newFindings(before: readonly Finding[], after: readonly Finding[]): string[] {
  const count = (findings: readonly Finding[]): Map<string, number> => {
    const counts = new Map<string, number>();
    for (const { rule, severity, accepted } of findings) {
      if (severity !== 'info' && accepted === undefined) counts.set(rule, (counts.get(rule) ?? 0) + 1);
    }
    return counts;
  };
  const [old, now] = [count(before), count(after)];
  const errors = new Set(after.filter(({ severity }) => severity === 'error').map(({ rule }) => rule));
  return [...now.keys()]
    .filter((rule) => (now.get(rule) ?? 0) > (old.get(rule) ?? 0))
    .sort((a, b) => Number(errors.has(b)) - Number(errors.has(a)) || (a < b ? -1 : 1));
}
