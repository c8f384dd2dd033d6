import { defineFigure, factOf, ifKnown, quantity, siOf, text, type Usual, usual } from '../figure/index.ts';
import { factPlace } from '../laminate/fraction.figure.ts';
import { NUMBER } from '../quantity/index.ts';
import { resinMaterial } from './needs.figure.ts';

/** Where the material gives no tolerance of its own. */
const TOLERANCE: Usual = {
  habit: 'ratio',
  what: 'deviation from the mix ratio',
  value: quantity(0.05, NUMBER),
  source: '3 to 5 % is typical, from memory; 3 % for one 4:1 epoxy on its data page',
};

/** How far the second part of a mix may be off, a share of itself: as the material says, else the habit of the shop. */
export const ratioTolerance = defineFigure<number>('ratio_tolerance', (bench, key) =>
  ifKnown(bench.ask(resinMaterial, key), (resin) =>
    resin.tolerance === undefined
      ? usual(bench, TOLERANCE)
      : siOf(
          factOf(
            resin.tolerance,
            text('the tolerance of {resin}', { resin: resin.name }),
            factPlace(resin, 'tolerance'),
          ),
        ),
  ),
);
