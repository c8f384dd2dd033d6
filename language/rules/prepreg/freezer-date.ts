import { text } from '../../../calc/figure/figure.ts';
import { UNKNOWN } from '../../../calc/model/index.ts';
import { aboutTime } from '../kit/shown.ts';
import { rule } from '../rule.ts';

export const prepregFreezerDate = rule({
  name: 'prepreg/freezer-date',
  severity: 'error',
  title: 'prepreg lay in the freezer longer than it keeps',
  on: 'record',
  check(context) {
    const { record, book } = context;
    if (record.date === undefined) return;
    for (const lot of record.lots) {
      const material = book.material(lot.material);
      const life = material?.freezer;
      // the date on the label decides, where the lot says it; record/expired reports that
      if (material?.kind !== 'prepreg' || life === undefined || life.value === UNKNOWN || lot.expires !== undefined)
        continue;
      const stored = (book.shop?.stores ?? []).find(
        ({ value }) => value !== UNKNOWN && value.material === lot.material,
      );
      const since = stored === undefined || stored.value === UNKNOWN ? undefined : stored.value.date;
      const kept = since === undefined ? Number.NaN : (Date.parse(record.date) - Date.parse(since)) / 1000;
      if (stored === undefined || since === undefined || !(kept > life.value.value.si)) continue;
      const shown = { material: lot.material, kept: aboutTime(kept), life: life.value.value, since };
      context.report({
        at: lot.path,
        message: text(
          '{material} was in store by {since}, {kept} before the day: it keeps {life} in the freezer; test it, or look for a newer roll',
          shown,
        ),
        related: [
          { at: stored.at, message: text('counted on {since}', shown) },
          { at: life.at, message: text('{material} keeps {life} in the freezer', shown) },
        ],
      });
    }
  },
});
