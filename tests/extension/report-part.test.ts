import { expect, it } from 'vitest';
import { partFirst } from '../../extension/report-part.ts';

const report = ['# deck', '', '## The part', '', 'a', '', '## Resin', '', 'b', '', '## Cost', '', 'c', ''];

it('the part of a report that was asked for stands on top, and nothing is lost', () => {
  const resin = partFirst(report.join('\n'), report.indexOf('## Resin')).split('\n');
  expect(resin.slice(0, 7)).toEqual(['# deck', '', '## Resin', '', 'b', '', '## The part']);
  const cost = partFirst(report.join('\n'), report.indexOf('## Cost')).split('\n');
  expect(cost.filter((line) => line.startsWith('## '))).toEqual(['## Cost', '## The part', '## Resin']);
  for (const told of [resin, cost]) expect([...told].sort()).toEqual([...report].sort());
});

it('a report without such a part stays as it is', () => {
  for (const line of [0, report.indexOf('## The part')])
    expect(partFirst(report.join('\n'), line)).toBe(report.join('\n'));
  expect(partFirst('nothing', 0)).toBe('nothing');
});
