import { type Figure, isCannot, isKnown, quantity, type Reason } from '../../calc/figure/figure.ts';
import type { Amount } from '../../calc/model/index.ts';
import { type Dimension, NUMBER, sameDimension } from '../../calc/quantity/index.ts';
import type { ReportFigure } from '../../calc/report.ts';
import { plainStyle, type Style, show } from './text.ts';

/** The figure of a row by its name. */
export const figureOf = (figures: readonly ReportFigure[], name: string): ReportFigure | undefined =>
  figures.find((figure) => figure.name === name);

/** A figure in words; undefined where it cannot be told. */
export function showFigure(
  row: ReportFigure | undefined,
  style: Style = plainStyle,
  percent = false,
): string | undefined {
  if (row === undefined || !isKnown(row.figure)) return undefined;
  return showNumber(row.figure.value, row.dimension, style, { percent, currency: row.currency });
}

/** A typed amount with what it is reckoned on: `650 mbar gauge`, `2 % by weight`, `8 holes`. */
export function showAmount(amount: Amount, style: Style): string {
  const counts =
    sameDimension(amount.dimension, NUMBER) &&
    /^[a-z]+$/.test(amount.unit ?? '') &&
    amount.unit !== 'phr' &&
    amount.unit !== 'ppm';
  const shown = counts ? `${show(amount, style)} ${amount.unit}` : show(amount, style);
  return amount.basis === undefined ? shown : `${shown} ${amount.basis}`;
}

export interface NumberKind {
  /** a ratio that is told in per cent */
  readonly percent?: boolean;
  readonly currency?: string;
}

export function showNumber(
  value: number,
  dimension: Dimension,
  style: Style,
  { percent = false, currency }: NumberKind = {},
): string {
  const shown = quantity(value, dimension, currency);
  return show(percent ? { ...shown, unit: '%' } : shown, style);
}

/** Why a figure cannot be told; empty where it is known. */
export function missingOf(figure: Figure<unknown>): readonly Reason[] {
  return isCannot(figure) ? figure.because : [];
}

export function reasonsOf(figure: Figure<unknown>): readonly Reason[] {
  return isKnown(figure) ? figure.reasons : [];
}
