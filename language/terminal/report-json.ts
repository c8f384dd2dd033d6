import { type Figure, isCannot, isKnown, quantity, type Reason } from '../../calc/figure/figure.ts';
import type { Place } from '../../calc/model/index.ts';
import { AREA, LENGTH, MASS, VOLUME } from '../../calc/quantity/index.ts';
import type { LayerRow, Report, ReportFigure, ResinRow, StepRow } from '../../calc/report.ts';
import type { Caution } from '../view/cautions.ts';
import { type Said, saidReasons } from '../view/reasons.ts';
import { testWords } from '../view/report/expects.ts';
import { stepWords } from '../view/step-words.ts';
import { plainStyle, safe } from '../view/text.ts';
import { cautionsJson } from './cautions-json.ts';
import { place } from './check-json.ts';
import type { Located } from './places.ts';
import { type SiNumber, siNumber } from './si.ts';

type Locate = (at: Place) => Located | undefined;

/** A chain of reasons is told so far; the whole of it is in the hovers. */
const ofPart = { deepest: 3, most: 20 };
const ofRow = { deepest: 1, most: 4 };

/** A report for machines; `schemas/report.json` describes it. */
export function reportJson(report: Report, cautions: readonly Caution[], locate: Locate): string {
  const told = new Telling(locate);
  const { title, size = null, revision = null, quantity: parts, currency = null } = report;
  const out = {
    schema: 'laybook/report@1',
    recipe: safe(report.recipe),
    title: title === undefined ? null : safe(title),
    size: size === null ? null : safe(size),
    revision,
    quantity: parts,
    currency,
    figures: told.figures(report.figures, ofPart),
    layers: report.layers.map((row) => told.layer(row)),
    resins: report.resins.map((row) => told.resin(row)),
    steps: report.steps.map((row) => told.step(row)),
    expects: report.expects.map((row) => told.expect(row)),
    cautions: cautionsJson(cautions),
  };
  return `${JSON.stringify(out, null, 2)}\n`;
}

/** Turns figures into plain data. */
class Telling {
  private readonly locate: Locate;

  constructor(locate: Locate) {
    this.locate = locate;
  }

  figures(rows: readonly ReportFigure[], depth: typeof ofPart): Record<string, unknown> {
    const told = rows.map(({ name, dimension, currency, figure }) => [
      // in a layer or a step its own name says enough
      name.replace(/^(layer|step)_/, ''),
      this.figure(figure, (value) => siNumber(quantity(value, dimension, currency)) ?? { value: 0, unit: '1' }, depth),
    ]);
    return Object.fromEntries(told);
  }

  layer({ laid, figures, piece, wrap, darts }: LayerRow) {
    const { name, layer, angle, turnedOver } = laid;
    return {
      name: safe(name),
      kind: layer.kind,
      material: layer.material === undefined ? null : safe(layer.material),
      angle: angle === undefined ? null : { value: Number(angle.toPrecision(10)), unit: 'rad' },
      turned_over: turnedOver,
      figures: this.figures(figures, ofRow),
      ...(piece === undefined
        ? {}
        : {
            piece: this.figure(
              piece,
              ({ length, width, area, past }) => lengths({ length, width, past }, { area }),
              ofRow,
            ),
          }),
      ...(wrap === undefined
        ? {}
        : {
            wrap: this.figure(
              wrap,
              ({ reach, needed, landing, wanted }) => lengths({ reach, needed, landing, wanted }),
              ofRow,
            ),
          }),
      ...(darts === undefined
        ? {}
        : {
            darts: this.figure(
              darts,
              ({ darts: count, slits, width, depth }) => ({ count, slits, ...lengths({ width, depth }) }),
              ofRow,
            ),
          }),
    };
  }

  resin({ name, figures, split }: ResinRow) {
    return {
      name: safe(name),
      figures: this.figures(figures, ofRow),
      mix: this.figure(
        split,
        ({ parts, total }) => ({
          total: si(total, MASS),
          parts: parts.map(({ what, mass, volume }) => ({
            what: safe(what),
            mass: si(mass, MASS),
            ...(volume === undefined ? {} : { volume: si(volume, VOLUME) }),
          })),
        }),
        ofRow,
      ),
    };
  }

  step({ step, depth, figures, amount }: StepRow) {
    return {
      verb: step.verb,
      words: stepWords(step, plainStyle),
      depth,
      figures: this.figures(figures, ofRow),
      takes: this.figure(
        amount,
        ({ items }) => ({
          items: items.map((item) => ({
            what: safe(item.what),
            material: item.material === undefined ? null : safe(item.material),
            amount: siNumber(item.amount) ?? null,
          })),
        }),
        ofRow,
      ),
    };
  }

  expect({ expectation, verdict }: Report['expects'][number]) {
    return {
      expects: safe(testWords(expectation.test, plainStyle)),
      verdict: verdict.verdict,
      actual: verdict.actual === undefined ? null : (siNumber(verdict.actual) ?? null),
      beyond: verdict.beyond === undefined ? null : (siNumber(verdict.beyond) ?? null),
      reasons: this.reasons(verdict.reasons, ofRow),
    };
  }

  private figure<T>(figure: Figure<T>, of: (value: T) => object, depth: typeof ofPart): object {
    if (isKnown(figure)) return { ...of(figure.value), reasons: this.reasons(figure.reasons, depth) };
    return { cannot: isCannot(figure) ? this.reasons(figure.because, ofRow) : [] };
  }

  private reasons(reasons: readonly Reason[], depth: typeof ofPart): object[] {
    return saidReasons(reasons, plainStyle, depth).map((said) => this.said(said));
  }

  private said({ words, from, source, at, reasons }: Said): object {
    const located = at === undefined ? undefined : this.locate(at);
    return {
      text: words,
      from,
      ...(source === undefined ? {} : { source: safe(source) }),
      ...(located === undefined ? {} : { at: place(located) }),
      ...(reasons.length === 0 ? {} : { reasons: reasons.map((each) => this.said(each)) }),
    };
  }
}

const si = (value: number, dimension: Parameters<typeof quantity>[1]): SiNumber | null =>
  siNumber(quantity(value, dimension)) ?? null;

function lengths(
  of: Readonly<Record<string, number>>,
  areas: Readonly<Record<string, number>> = {},
): Record<string, SiNumber | null> {
  const told = (values: Readonly<Record<string, number>>, dimension: typeof LENGTH) =>
    Object.entries(values).map(([name, value]) => [name, si(value, dimension)] as const);
  return Object.fromEntries([...told(of, LENGTH), ...told(areas, AREA)]);
}
