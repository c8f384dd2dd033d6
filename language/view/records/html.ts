import { mark } from '../../export/made-by.ts';
import { screenStyle, screenSvg } from '../../export/svg.ts';
import { xmlText } from '../../export/xml-text.ts';
import type { Section } from '../report/section.ts';
import { type Style, say } from '../text.ts';
import { translated } from '../translation.ts';
import { chartOf } from './chart.ts';
import type { RecordsPage } from './sections.ts';

export const recordsStyle = `
body { font: 11pt/1.4 "DejaVu Sans", "Segoe UI", Arial, sans-serif; color: #000; background: #fff; margin: 8mm auto; max-width: 260mm; padding: 0 4mm; }
table { border-collapse: collapse; margin: 2mm 0; }
th, td { border: 0.2mm solid #000; padding: 1mm 1.5mm; text-align: left; vertical-align: top; }
td.number, th.number { text-align: right; white-space: nowrap; }
figure { display: inline-block; margin: 2mm; width: 120mm; max-width: 100%; break-inside: avoid; }
figure svg { width: 100%; height: auto; }
${screenStyle}
.laybook-drawing .layer-outline .shape { stroke-width: 1px; }
`;

/** Records as a page of its own: small charts with the plan and the shop's spread, and the figures below. */
export function recordsHtml(title: string, page: RecordsPage, how: Style, language: string): string {
  return [
    '<!DOCTYPE html>',
    `<!-- ${mark} -->`,
    `<html lang="${xmlText(language)}"><head><meta charset="utf-8"><title>${xmlText(title)}</title>`,
    `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">`,
    `<style>${recordsStyle}</style></head><body><h1>${xmlText(title)}</h1>`,
    recordsBody(page, how),
    '</body></html>',
    '',
  ].join('\n');
}

export function recordsBody(page: RecordsPage, how: Style): string {
  const charts = page.sizes.map(({ size, series }, s) => {
    const drawn = series
      .filter(({ points }) => points.length > 1)
      .map((each, i) => {
        const caption = say('{quantity}: rings are builds, short lines their plan, dashed the limits of the shop', {
          quantity: translated(each.kind.title),
        });
        return `<figure>${screenSvg(chartOf(each, how), { prefix: `chart-${s}-${i}`, around: 2 })}<figcaption>${xmlText(caption)}</figcaption></figure>`;
      });
    return `<h2>${xmlText(size === undefined ? say('Charts') : say('Charts of size {size}', { size }))}</h2>${drawn.join('')}`;
  });
  return [...charts, ...page.sections.map(section)].join('\n');
}

function section({ title, lead, lines, table }: Section): string {
  const list =
    lines === undefined || lines.length === 0
      ? ''
      : `<ul>${lines.map((line) => `<li>${xmlText(line)}</li>`).join('')}</ul>`;
  const cell = (name: string, i: number, words: string): string =>
    `<${name}${table?.right.includes(i) ? ' class="number"' : ''}>${xmlText(words)}</${name}>`;
  const rows =
    table === undefined
      ? ''
      : `<table><thead><tr>${table.head.map((words, i) => cell('th', i, words)).join('')}</tr></thead><tbody>${table.rows
          .map((row) => `<tr>${row.map((words, i) => cell('td', i, words)).join('')}</tr>`)
          .join('')}</tbody></table>`;
  return `<h2>${xmlText(title)}</h2><p>${xmlText(lead)}</p>${list}${rows}`;
}
