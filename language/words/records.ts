import { argument } from './arguments.ts';
import type { Word } from './types.ts';

/** What a record may say: it is compared with the plan of the revision that it names. */
export const recordFacts: readonly Word[] = [
  { word: 'lot', at: ['record'], takes: [argument('name', { names: ['material'] }), argument('text'), argument('date', { after: 'expires', optional: true })], example: 'lot epoxy_slow "A-1182" expires 2026-11-30', meaning: 'The lot number on the can or roll. With it a bad batch can be traced to its parts.' },
  { word: 'expires', at: ['clause of fact'], takes: [argument('date')], example: 'lot epoxy_slow "A-1182" expires 2026-11-30', meaning: 'The date on the label. Material past it is reported.' },
  { word: 'by', at: ['record'], takes: [argument('text')], example: 'by "RT"', meaning: 'Who built the part.' },
  { word: 'ambient', at: ['record'], takes: [argument('temperature'), argument('ratio', { basis: ['RH'], optional: true })], example: 'ambient 19 degC, 60 % RH', meaning: 'Temperature and humidity of the shop on that day. Gel and fill times are compared at this temperature.' },
  { word: 'mixed', at: ['record'], takes: [argument('name', { names: ['layer'] }), argument('mass'), argument('mass', { after: 'with', optional: true }), argument('name', { names: ['catalyst'], optional: true })], example: 'mixed gel 0.41 kg with 8.2 g mekp_50', meaning: 'What was mixed for a layer, and with how much catalyst: more than 10 % off the plan is reported.' },
  { word: 'batch', at: ['record'], takes: [argument('mass'), argument('temperature', { after: 'at', optional: true })], example: 'batch 1.15 kg at 19.5 degC', meaning: 'One pot of resin: its mass, and its temperature when it was used.' },
  { word: 'vacuum', at: ['record'], takes: [argument('pressure', { basis: ['absolute', 'gauge'] })], example: 'vacuum 22 mbar absolute, dry', meaning: 'The vacuum that was reached, dry or wet.' },
  { word: 'dry', at: ['clause of fact'], example: 'vacuum 22 mbar absolute, dry', meaning: 'Read before any resin was in the bag.' },
  { word: 'leak', at: ['record'], takes: [argument('pressure'), argument('time', { after: 'in' })], example: 'leak 3 mbar in 10 min', meaning: 'What the bag lost with the pump shut off.' },
  { word: 'fill', at: ['record'], takes: [argument('time')], example: 'fill 4 min', meaning: 'How long it took from opening the feed until the part was full.' },
  { word: 'mass', at: ['record'], takes: [argument('mass')], example: 'mass 1.74 kg', meaning: 'What the part weighs. The difference to the plan is explained as fibre fraction.' },
  { word: 'thickness', at: ['record'], takes: [argument('length', { repeated: true }), argument('name', { after: 'at', optional: true })], example: 'thickness 20.9 mm, 21.1 mm at middle', meaning: 'Thickness as measured.' },
  { word: 'resin', at: ['record'], takes: [argument('mass')], example: 'resin 1.10 kg', meaning: 'The resin that went in, all pots together.' },
  { word: 'barcol', at: ['record'], takes: [argument('number', { repeated: true }), argument('name', { after: 'on', names: ['layer'], optional: true })], example: 'barcol 33, 36, 34 on skin', source: 'ASTM D2583: ten readings on glass laminate', meaning: 'Hardness readings; their mean counts.' },
  { word: 'step', at: ['record'], takes: [argument('name'), argument('time', { optional: true })], example: 'step lay 35 min', meaning: 'How long a step took.' },
  { word: 'photo', at: ['record'], takes: [argument('text')], example: 'photo "records/31-heel.jpg"', meaning: 'A picture, found beside this file and never outside the workspace.' },
  { word: 'log', at: ['record'], takes: [argument('text')], example: 'log "records/31-oven.csv"', meaning: 'A file of readings, from the oven or the gauge.' },
  { word: 'differs', at: ['record'], takes: [argument('text')], example: 'differs "Second perforated film left out: none on the shelf."', meaning: 'What was done otherwise than the recipe says.' },
];
