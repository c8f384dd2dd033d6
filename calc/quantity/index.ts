/** The one door of this folder. */
export type * from './types.ts';
export * from './dimension.ts';
export { add, divide, isMismatch, multiply, negate, subtract } from './arithmetic.ts';
export { unitsOf } from './complete.ts';
export { CURRENCIES } from './currencies.ts';
export { formatNumber, formatQuantity, BEYOND_RECKONING } from './format.ts';
export { describeDimension, describeQuantity, namedDimension, nameOfDimension } from './names.ts';
export { parseUnit } from './parse.ts';
export { bareNumber, convert, isProblem, makeQuantity, quantityIn, siQuantity, unitProblem } from './quantity.ts';
