import { isKnown, quantity } from '../../../calc/figure/figure.ts';
import type { Bench } from '../../../calc/figure/index.ts';
import type { Step } from '../../../calc/model/index.ts';
import { isImpossible } from '../../../calc/outcome.ts';
import { pasteMass } from '../../../calc/plan/paste.figure.ts';
import { pasteOf } from '../../../calc/plan/reading.ts';
import { formatNumber, MASS, NUMBER, TIME, VOLUME } from '../../../calc/quantity/index.ts';
import { doseAt } from '../../../calc/resin/dose.figure.ts';
import { type MixPart, mixOf, scaleStep } from '../../../calc/resin/mix.figure.ts';
import { liquidsNamed } from '../../../calc/resin/named-liquids.ts';
import { potLifeFor } from '../../../calc/resin/pot.figure.ts';
import { ratioTolerance } from '../../../calc/resin/ratio-tolerance.figure.ts';
import { type StepPot, stepPots } from '../../../calc/resin/step-pots.figure.ts';
import { readingsOfMix } from '../../../calc/resin/weighing.ts';
import type { Table } from '../report/section.ts';
import { type Style, say, show } from '../text.ts';
import { thingWords } from '../thing-words.ts';
import type { SheetPot } from './sheet.ts';

/** The pots of one step, with what the balance must show after each part. */
export function potsOfStep(bench: Bench, step: Step, style: Style): SheetPot[] {
  const pots = bench.ask(stepPots, step.path);
  const planned = isKnown(pots) ? pots.value.map((pot) => potOf(bench, pot, style)) : [];
  const named = planned.length > 0 ? [] : liquidsNamed(bench, step);
  return [...planned, ...named.flatMap((resin) => asNeeded(bench, resin, step, style))];
}

/** kg that the parts of a mix are told for that is used as it goes */
const some = 0.1;

/** How a resin is mixed that a step spreads as it goes. */
function asNeeded(bench: Bench, resin: string, step: Step, style: Style): SheetPot[] {
  const mixed = mixOf(bench, resin, some, (name) => doseAt(bench, name, step.path));
  if (!isKnown(mixed)) return [];
  const pot: StepPot = { resin, pots: 1, mass: mixed.value.total, parts: mixed.value.parts, split: mixed.value };
  const { table, notes } = potOf(bench, pot, style);
  return [
    {
      title: say('Mix {resin} as it is used; of {mass} are', { resin, mass: inCup(pot) }, style),
      table,
      notes: [usedWords(bench, resin, step, style), ...notes.slice(1)],
    },
  ];
}

function usedWords(bench: Bench, resin: string, step: Step, style: Style): string {
  const used = resin === pasteOf(step) ? pasteMass(bench, step) : undefined;
  return used !== undefined && isKnown(used) && used.value > 0
    ? say(
        'About {mass} of it is used: mix a little more, and never more than is used up at once.',
        { mass: quantity(used.value, MASS) },
        style,
      )
    : say('How much is used is not worked out: mix no more than is used up at once.');
}

function potOf(bench: Bench, pot: StepPot, style: Style): SheetPot {
  const life = potLifeFor(bench, pot.resin, pot.mass);
  const scale = bench.ask(scaleStep);
  const tolerance = bench.ask(ratioTolerance, pot.resin);
  const each = isKnown(tolerance) ? tolerance.value : 0;
  const shown = {
    resin: pot.resin,
    pots: pot.pots,
    // all that is in the cup, as the balance shows it at the end
    mass: inCup(pot),
    ...(isKnown(life) ? { time: quantity(life.value, TIME) } : {}),
  };
  return {
    title:
      pot.pots === 1
        ? say('Mix {resin}: {mass}', shown, style)
        : say('Mix {resin}: {pots} pots of {mass}, one after the other', shown, style),
    table: weighing(pot, each, isKnown(scale) ? scale.value : 0.001, style),
    ...(pot.pots > 1 ? { log: logOf(pot) } : {}),
    notes: [
      say('Mix it when everything before this step is done, and not before.'),
      ...(isKnown(life)
        ? [
            pot.pots === 1
              ? say('Use the pot within {time} of mixing.', shown, style)
              : say('Use each pot within {time} of mixing; never mix the next before this one is empty.', shown, style),
          ]
        : []),
      ...(pot.parts.length < 2 || each === 0
        ? []
        : [
            say(
              'Second weighing: read the balance again after each part, the cup tared once. Outside the limits, do not use the pot ({most} off is the most; the data sheet has the last word).',
              { most: { ...quantity(each, NUMBER), unit: '%' } },
              style,
            ),
          ]),
    ],
  };
}

const inCup = ({ parts }: StepPot) =>
  quantity(
    parts.reduce((sum, { mass }) => sum + mass, 0),
    MASS,
  );

const pouredOf = (parts: readonly MixPart[]): readonly MixPart[] => parts.filter(({ mass }) => mass > 0);

/** More rows than this are no list to be filled in by hand. */
const mostRows = 60;

/** A row for each of several pots: what the balance showed after each part, when it was mixed and when it was empty. */
function logOf({ pots, parts }: StepPot): Table {
  const poured = pouredOf(parts).map(({ what }) => thingWords(what));
  const head = [say('pot'), ...poured, say('mixed at'), say('empty at')];
  const rows = Array.from({ length: Math.min(pots, mostRows) }, (_, i) => [`${i + 1}`, ...head.slice(1).map(() => '')]);
  return { head, right: [], rows };
}

/** Parts in the order they are poured, and the limits between which the balance may stand. */
function weighing({ parts, pots }: StepPot, tolerance: number, step: number, style: Style): Table {
  const poured = pouredOf(parts);
  const readings = readingsOfMix(poured, tolerance);
  const grams = (si: number): string => gramsOf(si, step, style);
  const rows = (isImpossible(readings) ? [] : readings).map(({ what, mass, shows, between }, i) => {
    const volume = poured[i]?.volume;
    return [
      thingWords(what),
      volume === undefined ? grams(mass) : `${grams(mass)} (${millilitres(volume, style)})`,
      grams(shows),
      between === undefined ? '' : say('{low} to {high}', { low: grams(between.low), high: grams(between.high) }),
      ...(pots === 1 ? [''] : []),
    ];
  });
  return {
    head: [
      say('part'),
      say('pour'),
      say('balance shows'),
      say('good between'),
      ...(pots === 1 ? [say('as weighed')] : []),
    ],
    right: [1, 2, 3],
    rows,
  };
}

/** Syringes and cups show millilitres, in every system of units. */
const millilitres = (volume: number, style: Style): string =>
  show({ ...quantity(volume, VOLUME), unit: 'ml' }, { ...style, units: 'si' });

/** Balances show grams, in every system of units, in steps of their own. */
function gramsOf(si: number, step: number, { locale }: Style): string {
  const rounded = (step > 0 && Math.round(si / step) * step) || Number(si.toPrecision(2));
  const digits = 12;
  return `${formatNumber(Number((rounded * 1000).toPrecision(digits)), { digits, ...(locale === undefined ? {} : { locale }) })} g`;
}
