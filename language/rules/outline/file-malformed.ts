import { text } from '../../../calc/figure/index.ts';
import { atLine, drawingOf, typedShapes } from '../kit/outlines.ts';
import { rule } from '../rule.ts';

/** A file that is wrong in many places is told by the first few. */
const mostTold = 3;

export const outlineFileMalformed = rule({
  name: 'outline/file-malformed',
  severity: 'warning',
  title: 'part of an outline file could not be read',
  on: 'recipe',
  check(context) {
    for (const { at, shape } of typedShapes(context)) {
      if (shape.kind !== 'file') continue;
      const broken = (drawingOf(context.bench, shape)?.problems ?? []).filter((problem) => problem.kind === 'broken');
      const [first] = broken;
      if (first === undefined) continue;
      const told = broken.slice(0, mostTold).map(({ message, at: place }) => atLine(message, place?.line));
      const [one = first.message, two, three] = told;
      const { file } = shape;
      context.report({
        at,
        message:
          two === undefined
            ? text('{file}: {what}', { file, what: one })
            : three === undefined
              ? text('{file}: {what}; {more}', { file, what: one, more: two })
              : text('{file}, {count} places: {what}; {more}; {rest}', {
                  file,
                  count: broken.length,
                  what: one,
                  more: two,
                  rest: three,
                }),
      });
    }
  },
});
