import { screenStyle } from '../../export/svg.ts';

const SIZES = { a4: 'A4', letter: 'letter' } as const;

/**
 * Black on white, no shade that a printer loses, letters of 12 pt and boxes of 8 mm: read at arm's length, ticked with
 * gloves on. On a screen the sheet lies on paper too: what is seen is what is printed.
 */
export const sheetStyle = (paper: keyof typeof SIZES): string => `
@page { size: ${SIZES[paper]} portrait; margin: 14mm 12mm; }
* { box-sizing: border-box; }
body { font: 12pt/1.35 "DejaVu Sans", "Segoe UI", Arial, sans-serif; color: #000; background: #fff; margin: 0 auto; max-width: 190mm; padding: 4mm; }
@media print { body { padding: 0; max-width: none; } }
h1 { font-size: 24pt; margin: 0 0 3mm; }
h2 { font-size: 16pt; margin: 7mm 0 2mm; border-bottom: 0.6mm solid #000; break-after: avoid; }
h3 { font-size: 14pt; margin: 0 0 1mm; }
h4 { font-size: 12pt; margin: 1mm 0; }
p { margin: 1mm 0; }
h1, h2, h3, h4, p, li, th, td, dd, figcaption { unicode-bidi: plaintext; text-align: left; }
ul { margin: 1mm 0; padding-left: 6mm; }
.whole { break-inside: avoid; }
header { border-bottom: 1mm solid #000; padding-bottom: 3mm; overflow: hidden; }
.code { float: right; width: 38mm; text-align: center; font-size: 8pt; overflow-wrap: anywhere; }
.code svg { width: 30mm; height: 30mm; }
dl { display: flex; flex-wrap: wrap; gap: 1mm 6mm; margin: 1mm 0; }
dl div { display: flex; gap: 2mm; }
dt { font-weight: normal; }
dt::after { content: ":"; }
dd { margin: 0; font-weight: bold; }
.identity { font-size: 14pt; }
table { border-collapse: collapse; width: 100%; margin: 1mm 0 2mm; font-size: 11pt; }
th, td { border: 0.2mm solid #000; padding: 1mm 1.5mm; text-align: left; vertical-align: top; height: 8mm; }
th { font-weight: bold; border-bottom-width: 0.6mm; }
td.number, th.number { text-align: right; white-space: nowrap; }
tr { break-inside: avoid; }
thead { display: table-header-group; }
td svg { display: block; width: 38mm; height: 20mm; }
.step { display: flex; gap: 3mm; border-top: 0.3mm solid #000; padding: 2mm 0; }
.box { flex: none; width: 8mm; height: 8mm; border: 0.5mm solid #000; }
.box.small { display: inline-block; width: 5mm; height: 5mm; vertical-align: middle; }
.step > .number { flex: none; width: 12mm; font-size: 16pt; font-weight: bold; }
.body { flex: 1; min-width: 0; padding-right: 0.5mm; }
.says { font-family: "DejaVu Sans Mono", Consolas, monospace; font-size: 10pt; }
.why { font-style: italic; font-size: 10pt; }
.note { border-left: 1mm solid #000; padding-left: 2mm; }
.caution { border: 0.8mm solid #000; padding: 1.5mm 2mm; margin: 1mm 0; }
.pot { border: 0.3mm dashed #000; padding: 1mm 2mm; margin: 1mm 0; }
.blanks { display: flex; flex-wrap: wrap; gap: 2mm 6mm; }
.blank { white-space: nowrap; line-height: 8mm; }
.line { display: inline-block; min-width: 24mm; border-bottom: 0.3mm solid #000; height: 6mm; }
figure { margin: 2mm 0; }
figure svg { width: 100%; max-height: 150mm; }
figcaption { font-size: 10pt; }
.foot { font-size: 9pt; margin-top: 5mm; }
${screenStyle}
.laybook-drawing { --laybook-line: #000; --laybook-text: #000; --laybook-hatch: #777; --laybook-cloth: #000; --laybook-core: #555; --laybook-insert: #000; --laybook-process: #333; --laybook-flow: #000; --laybook-zone: #444; --laybook-tool: #666; --laybook-coat: #000; --laybook-dimension: #444; --laybook-mark: #000; --laybook-drill: #000; }
`;
