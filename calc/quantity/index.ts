/** The one door of this folder. */

export { add, divide, isMismatch, multiply, negate, subtract } from './arithmetic.ts';
export { unitsOf } from './complete.ts';
export { CURRENCIES } from './currencies.ts';
export * from './dimension.ts';
export { BEYOND_RECKONING, formatNumber, formatQuantity } from './format.ts';
export { describeDimension, describeQuantity, namedDimension, nameOfDimension } from './names.ts';
export { parseUnit } from './parse.ts';
export { bareNumber, convert, isProblem, makeQuantity, quantityIn, siQuantity, unitProblem } from './quantity.ts';
export type * from './types.ts';
