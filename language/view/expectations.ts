import type { LangiumDocument } from 'langium';
import { evaluate } from '../../calc/expect/evaluate.ts';
import { benchOf } from '../../calc/figure/index.ts';
import type { Recipe, Test } from '../../calc/model/index.ts';
import { type Lowered, type Span, spanOf } from '../lower/index.ts';
import type { ExpectationsResult, ExpectingRecipe, WireExpectation } from '../protocol/expectations.ts';
import type { WireRange } from '../protocol/place.ts';
import type { CardBook } from './card/book.ts';
import { brokenLine } from './card/broken.ts';
import { saidReasons } from './reasons.ts';
import { asTyped, testWords } from './report/expects.ts';
import { say, show } from './text.ts';

/** The `expect` lines of a file, recipe by recipe and size by size, and how they stand. */
export function expectationsOf(document: LangiumDocument, book: CardBook): ExpectationsResult {
  const recipes = book.analysis.entries(document).flatMap((lowered): ExpectingRecipe[] => {
    if (lowered.model.kind !== 'recipe' || lowered.name === '') return [];
    const broken = brokenLine(document, lowered) !== undefined;
    return lowered.model.recipes.map((recipe) => ({
      recipe: recipe.name,
      ...(recipe.size === undefined ? {} : { size: recipe.size }),
      range: rangeOf(document, spanOf(lowered.places, '')),
      broken,
      expects: expectsOf(document, recipe, lowered, book),
    }));
  });
  return { recipes };
}

function expectsOf(document: LangiumDocument, recipe: Recipe, lowered: Lowered, book: CardBook): WireExpectation[] {
  const style = book.style();
  const bench = benchOf(recipe, book.analysis.shelf());
  const seen = new Map<string, number>();
  return recipe.expects.map(({ test, path }) => {
    const subject = subjectOf(test);
    const count = (seen.get(subject) ?? 0) + 1;
    seen.set(subject, count);
    const { verdict, actual, beyond, reasons } = evaluate(bench, test, path);
    const words = testWords(test, style);
    return {
      id: count === 1 ? subject : `${subject} #${count}`,
      words,
      range: rangeOf(document, spanOf(lowered.places, path)),
      verdict,
      expected: words.startsWith(subject) ? words.slice(subject.length).trim() : words,
      ...(actual === undefined ? {} : { actual: show(asTyped(actual, test), style) }),
      ...(verdict === 'not met' && beyond !== undefined ? { beyond: show(asTyped(beyond, test), style) } : {}),
      why: saidReasons(reasons, style, { deepest: 1, most: 5 }).map(({ words: why, at }) => {
        const place = at && book.placeAt(at);
        return { words: why, ...(place === undefined ? {} : { at: place }) };
      }),
    };
  });
}

/** What is tested, without its limit: `thickness at middle`. */
function subjectOf({ what, under, on, at }: Test): string {
  return [
    what,
    ...(under === undefined ? [] : ['under', under]),
    ...(on === undefined ? [] : ['on', on]),
    ...(at === undefined ? [] : ['at', typeof at === 'string' ? at : say('a place')]),
  ].join(' ');
}

function rangeOf(document: LangiumDocument, span: Span | undefined): WireRange {
  const { textDocument } = document;
  const at = textDocument.positionAt(span?.offset ?? 0);
  return { start: at, end: span === undefined ? at : textDocument.positionAt(span.end) };
}
