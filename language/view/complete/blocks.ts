// biome-ignore-all lint/suspicious/noTemplateCurlyInString: the places to fill of a snippet are written so
import type { Place } from '../../words/index.ts';

/** What is put in for a word that opens a block: the block, with places to fill. Keyed by the word, and by place where that counts. */
const blocks: Readonly<Record<string, string>> = {
  'shop at book':
    'shop "${1:Our workshop}" {\n  currency ${2:EUR}\n  labour ${3:34} ${2:EUR}/h\n  overhead ${4:12} %\n  ambient ${5:21} degC\n  $0\n}',
  'fibre at book': 'fibre ${1:name} "${2:Title}" {\n  density ${3:2550} kg/m3\n  $0\n}',
  'fabric at book':
    'fabric ${1:name} "${2:Title}" {\n  fibre ${3:e_glass}\n  layers ${4:woven 0 deg 100 g/m2, 90 deg 100 g/m2}\n  roll ${5:1270} mm by ${6:50} m\n  price ${7:?}\n  $0\n}',
  'prepreg at book':
    'prepreg ${1:name} "${2:Title}" {\n  fibre ${3:carbon_hs}\n  layers ${4:woven 0 deg 100 g/m2, 90 deg 100 g/m2}\n  resin ${5:42} % by weight\n  price ${6:?}\n  $0\n}',
  'resin at book':
    'resin ${1:name} "${2:Title}" {\n  family ${3:epoxy}\n  mix ${4:100:31} by weight\n  density ${5:1.10} g/cm3\n  price ${6:?}\n  $0\n}',
  'gelcoat at book':
    'gelcoat ${1:name} "${2:Title}" {\n  family ${3:polyester}\n  catalyst ${4:mekp_50} ${5:2} % by weight\n  density ${6:1.25} g/cm3\n  price ${7:?}\n  $0\n}',
  'catalyst at book': 'catalyst ${1:name} "${2:Title}" {\n  density ${3:1.16} g/cm3\n  price ${4:?}\n  $0\n}',
  'paste at book':
    'paste ${1:name} "${2:Title}" {\n  from ${3:resin}\n  filler ${4:colloidal_silica} ${5:4} % by weight\n  $0\n}',
  'core at book':
    'core ${1:name} "${2:Title}" {\n  density ${3:80} kg/m3\n  sheet ${4:1220} mm by ${5:2440} mm\n  price ${6:?}\n  $0\n}',
  'consumable at book': 'consumable ${1:name} "${2:Title}" {\n  kind ${3:peel}\n  price ${4:?}\n  $0\n}',
  'tool at book':
    'tool ${1:name} {\n  flat ${2:1600} mm by ${3:700} mm\n  flange ${4:110} mm\n  limit ${5:60} degC\n  $0\n}',
  'recipe at book':
    'recipe ${1:name} "${2:Title}" {\n  revision 1\n  quantity ${3:1}\n\n  part {\n    outline rectangle ${4:900} mm by ${5:500} mm\n  }\n\n  stack from tool ${6:tool} {\n    $0\n  }\n\n  process ${7|infusion,hand,bagged,prepreg|} with ${8:resin} at ${9:21} degC {\n  }\n}',
  'record at book': 'record ${1:recipe} ${2:2026-01-31} "${3:no. 1}" {\n  revision ${4:1}\n  mass ${5:1} kg\n  $0\n}',
  'part at recipe':
    'part {\n  outline rounded ${1:720} mm by ${2:520} mm corner ${3:90} mm\n  edge ${4|square,round 8 mm|}\n  $0\n}',
  'stack at recipe': 'stack from tool ${1:tool} {\n  $0\n}',
  'process at recipe': 'process ${1|infusion,hand,bagged,prepreg|} with ${2:resin} at ${3:21} degC {\n  $0\n}',
  'load at recipe':
    'load ${1:name} {\n  supports ${2:760} mm apart\n  weight ${3:95} kg over ${4:120} mm at middle\n  factor ${5:2}\n}',
  'size at recipe': 'size ${1:name} {\n  $0\n}',
  'repeat at stack': 'repeat ${1:3}, stagger ${2:60} mm {\n  $0\n}',
  'kit at process': 'kit {\n  tack ${1:spray_tack} ${2:8} g/m2\n  lay ${3:outer} to ${4:body}\n}',
  'infuse at process':
    'infuse {\n  open ${1:f1}\n  clamp ${1:f1} when full\n  vacuum ${2:50} mbar absolute until gel\n}',
  'cure at process':
    'cure {\n  hold ${1:24} h at ${2:23} degC\n  ramp ${3:10} K/h to ${4:50} degC\n  hold ${5:8} h at ${4:50} degC\n}',
  'postcure at process':
    'postcure ${1|free,flat,hung,on tool|} {\n  ramp ${2:10} K/h to ${3:50} degC\n  hold ${4:8} h at ${3:50} degC\n  cool ${5:15} K/h to ${6:30} degC\n}',
};

export function blockSnippet(word: string, place: Place): string | undefined {
  return blocks[`${word} at ${place}`];
}
