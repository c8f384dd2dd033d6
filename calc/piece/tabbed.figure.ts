import {
  type Bench,
  defineFigure,
  type Figure,
  ifKnown,
  isKnown,
  known,
  knownBy,
  text,
  typed,
  whenKnown,
} from '../figure/index.ts';
import { inRecipe, partFrame } from '../outline/part.figure.ts';
import { laidLayer } from '../stack/laid.figure.ts';
import type { LaidLayer } from '../stack/laid.ts';
import { type ClothContours, clothContours } from './cloth-contours.figure.ts';
import { placedDarts } from './darts.figure.ts';
import { type Tab, withTabs } from './tabs.ts';

/** A piece of cloth with its tabs, which stand where no dart is cut. */
export const tabbedContours = defineFigure<ClothContours>('tabbed_contours', (bench, key) => {
  const laid = bench.ask(laidLayer, key);
  if (!isKnown(laid)) return laid;
  const { tabs } = laid.value.layer;
  if (tabs === undefined || tabs.length === 0) return bench.ask(clothContours, key);
  const inputs = {
    contours: bench.ask(clothContours, key),
    darts: bench.ask(placedDarts, key),
    tabs: tabsOf(bench, laid.value),
  };
  return whenKnown(inputs, ({ contours, darts, tabs }, reasons) => {
    const flats = contours.flats.map((flat, i) =>
      i === 0 ? { ...flat, outer: withTabs(flat.outer, tabs, darts) } : flat,
    );
    return knownBy({ ...contours, flats }, reasons);
  });
});

function tabsOf(bench: Bench, laid: LaidLayer): Figure<readonly Tab[]> {
  const asked = laid.layer.tabs ?? [];
  if (asked.length === 0) return known([]);
  const at = inRecipe(bench, laid.path);
  return ifKnown(bench.ask(partFrame), (frame, reasons) => {
    const { ends } = frame.part;
    const tabs: Tab[] = [];
    for (const { end, length } of asked) {
      if (end === undefined || (end !== ends?.from && end !== ends?.to)) {
        const what = text('the end of the part that the tab of {layer} is at', { layer: laid.name });
        return typed<readonly Tab[]>(undefined, what, at);
      }
      tabs.push({ end: end === ends.from ? 'low' : 'high', length: length.si });
    }
    return knownBy(tabs, reasons);
  });
}
