import { text } from '../../calc/figure/figure.ts';
import type { Amount, Material } from '../../calc/model/index.ts';
import { UNKNOWN } from '../../calc/model/index.ts';
import { amountOf, firstAmount, known, partOf, type Said, spanOfRead, textOf, wordAt } from './arguments.ts';
import { layers, price, roll, sheet, sleeve } from './cloth-facts.ts';
import {
  amountReader,
  append,
  conditionReader,
  type FactLine,
  type FactReader,
  factFrom,
  firstRead,
  flagReader,
  incomplete,
  needBasis,
  put,
  wordReader,
} from './facts.ts';
import type { Lowering } from './lowering.ts';

type Reader = FactReader<Material>;

function fraction(of: 'fibre' | 'resin'): Reader {
  return (low, line, into) => {
    for (const point of line.points) {
      const read = firstRead(point);
      const amount = known(amountOf(low, read, 'ratio'));
      if (amount === undefined) continue;
      needBasis(low, amount, 'mixture', read);
      // `52 % by volume infused`: the process stands behind the basis
      const process = [...point.values, ...point.parts.flatMap((p) => p.values)].flatMap(({ argument }) =>
        argument.kind === 'word' ? [argument.word] : [],
      )[0];
      append(into, 'fractions', [factFrom(low, line, { of, amount, ...(process === undefined ? {} : { process }) })]);
    }
    if (line.points.length === 0)
      incomplete(low, line, of === 'fibre' ? 'fraction 52 % by volume infused' : 'resin 42 % by weight');
  };
}

const mix: Reader = (low, line, into) => {
  const point = line.points[0];
  const ratio = point?.values.find(({ argument }) => argument.kind === 'ratio')?.argument;
  if (point === undefined || ratio?.kind !== 'ratio') return incomplete(low, line, 'mix 100:31 by weight');
  if (ratio.parts.some((part) => !(part > 0))) {
    low.problem('unit/suspicious', line.node, 'every part of a mixing ratio is above zero');
    return;
  }
  const word = wordAt(partOf(point, 'by')?.values ?? []);
  const basis = word === 'weight' ? 'by weight' : word === 'volume' ? 'by volume' : undefined;
  if (basis === undefined) {
    const end = spanOfRead(point.values[0])?.end;
    low.problem(
      'unit/no-basis',
      line.node,
      'a mixing ratio says by what: by weight or by volume',
      end === undefined
        ? []
        : ['by weight', 'by volume'].map((words) => ({
            title: text('Write {what}', { what: words }),
            edits: [{ offset: end, end, text: ` ${words}` }],
          })),
    );
  }
  put(into, 'mix', factFrom(low, line, { ratio: ratio.parts, ...(basis === undefined ? {} : { basis }) }));
};

/** `catalyst mekp_50 1.5 % by weight, 1 % to 2.5 % by weight` */
const catalyst: Reader = (low, line, into) => {
  if (line.material === undefined)
    return incomplete(low, line, 'catalyst mekp_50 1.5 % by weight, 1 % to 2.5 % by weight');
  const doses = line.points.map((point) => readDose(low, point));
  const dose = doses.find((d) => d.high === undefined)?.low;
  const range = doses.find((d) => d.high !== undefined && d.low !== undefined);
  put(
    into,
    'catalyst',
    factFrom(low, line, {
      material: line.material,
      ...(dose === undefined ? {} : { dose }),
      ...(range?.low === undefined || range.high === undefined ? {} : { range: { low: range.low, high: range.high } }),
    }),
  );
};

function readDose(low: Lowering, point: Said): { low?: Amount; high?: Amount } {
  const read = point.values.find(({ argument }) => argument.kind === 'amount') ?? partOf(point, 'from')?.values[0];
  const least = known(amountOf(low, read, 'ratio'));
  const highRead = partOf(point, 'to')?.values[0];
  const high = known(amountOf(low, highRead, 'ratio'));
  const last = high ?? least;
  if (last !== undefined) needBasis(low, last, 'mixture', highRead ?? read);
  return { low: least, high };
}

const filler: Reader = (low, line, into) => {
  const read = line.points[0] && firstRead(line.points[0]);
  const share = known(amountOf(low, read, 'ratio'));
  if (line.material === undefined || share === undefined)
    return incomplete(low, line, 'filler colloidal_silica 4 % by weight');
  needBasis(low, share, 'mixture', read);
  append(into, 'fillers', [factFrom(low, line, { material: line.material, share })]);
};

const wetFilm: Reader = (low, line, into) => {
  const least = known(firstAmount(low, line.points[0]?.values ?? [], 'length'));
  const high = known(firstAmount(low, line.points[0] ? (partOf(line.points[0], 'to')?.values ?? []) : [], 'length'));
  if (least === undefined || high === undefined) return incomplete(low, line, 'wet_film 400 um to 600 um');
  put(into, 'wetFilm', factFrom(low, line, { low: least, high }));
};

/** `vacuum no_deeper 50 mbar absolute` */
const vacuum: Reader = (low, line, into) => {
  const read = line.points[0]?.values.find(({ argument }) => argument.kind === 'amount');
  const amount = known(amountOf(low, read, 'pressure'));
  if (read === undefined) return incomplete(low, line, 'vacuum no_deeper 50 mbar absolute');
  if (amount === undefined) return;
  needBasis(low, amount, 'vacuum', read);
  put(into, 'deepestVacuum', factFrom(low, line, amount));
};

/** `dry 2 h at 80 degC, use within 1 h` */
const dry: Reader = (low, line, into) => {
  const point = line.points[0];
  const time = point && known(firstAmount(low, point.values, 'time'));
  if (point === undefined || time === undefined) return incomplete(low, line, 'dry 2 h at 80 degC, use within 1 h');
  const temperature = known(firstAmount(low, partOf(point, 'at')?.values ?? [], 'temperature'));
  const use = line.points.find((p) => wordAt(p.values) === 'use');
  const useWithin = use && known(firstAmount(low, partOf(use, 'within')?.values ?? [], 'time'));
  put(
    into,
    'dry',
    factFrom(low, line, {
      time,
      ...(temperature === undefined ? {} : { temperature }),
      ...(useWithin === undefined ? {} : { useWithin }),
    }),
  );
};

/** `open 90 min at 23 degC` of a resin, `open 1.5 %` of a perforated film */
const open: Reader = (low, line, into) => {
  const first = line.points[0] && firstRead(line.points[0]);
  if (first?.argument.kind === 'amount' && first.argument.amount.unit === '%')
    amountReader<Material>('openArea', 'ratio', 'open 1.5 %')(low, line, into);
  else conditionReader<Material>('openTime', 'time', 'open 90 min at 23 degC')(low, line, into);
};

/** `8 m2/kg`, `12 m2/L` or `150 g/m2`: three ways on labels, kept as typed. */
const coverage: Reader = (low, line, into) => {
  const read = line.points[0] && firstRead(line.points[0]);
  const argument = read?.argument;
  if (argument?.kind === 'unknown') put(into, 'coverage', factFrom(low, line, UNKNOWN));
  if (argument?.kind !== 'amount')
    return argument === undefined ? incomplete(low, line, 'coverage 12 m2/L') : undefined;
  const { length, mass } = argument.amount.dimension;
  const name =
    mass === -1 && length === 2 ? 'coverage' : mass === 0 && length === -1 ? 'coverage by volume' : 'areal weight';
  put(into, 'coverage', factFrom(low, line, known(amountOf(low, read, name))));
};

/** `use within 1 h` */
const use: Reader = (low, line, into) => {
  const point = line.points[0];
  put(
    into,
    'useWithin',
    factFrom(low, line, point && known(firstAmount(low, partOf(point, 'within')?.values ?? [], 'time'))),
  );
};

const ignoredSource: Reader = (low, line, into) => {
  const words = line.points[0] === undefined ? undefined : textOf(line.points[0].values);
  if (words === undefined) incomplete(low, line, 'source "data sheet, 2026-03"');
  else put(into, 'source', words);
};

/** Every word of a material block. Which of them make sense for a kind of material is said by language/words. */
export const materialFacts: Readonly<Record<string, Reader>> = {
  fibre: wordReader('fibre', 'fibre e_glass'),
  layers,
  roll,
  sleeve,
  sheet,
  price,
  mix,
  catalyst,
  filler,
  dry,
  open,
  coverage,
  use,
  vacuum,
  fraction: fraction('fibre'),
  resin: fraction('resin'),
  from: wordReader('madeFrom', 'from epoxy_laminating'),
  wet_film: wetFilm,
  source: ignoredSource,
  binder: wordReader('binder', 'binder styrene_soluble'),
  sizing: wordReader('sizing', 'sizing silane_epoxy'),
  family: wordReader('family', 'family epoxy'),
  kind: wordReader('consumableKind', 'kind peel'),
  resists: wordReader('resists', 'resists styrene', true),
  attacked_by: wordReader('attackedBy', 'attacked_by styrene', true),
  accelerated: flagReader('accelerated'),
  air_inhibited: flagReader('airInhibited'),
  waxed: flagReader('waxed'),
  dark: flagReader('dark'),
  permeability: conditionReader('permeability', 'permeability', 'permeability 1.1e-10 m2 at 52 % by volume'),
  shear: amountReader('shear', 'ratio', 'shear 10 %'),
  tolerance: amountReader('tolerance', 'ratio', 'tolerance 3 %'),
  styrene: amountReader('styrene', 'ratio', 'styrene 40 % by weight', 'mixture'),
  density: amountReader('density', 'density', 'density 1.10 g/cm3'),
  viscosity: conditionReader('viscosity', 'viscosity', 'viscosity 290 mPa.s at 23 degC'),
  pot_life: conditionReader('potLife', 'time', 'pot_life 110 min at 23 degC for 150 g'),
  gel: conditionReader('gel', 'time', 'gel 240 min at 23 degC'),
  recoat: conditionReader('recoat', 'time', 'recoat 40 min to 24 h at 20 degC'),
  laminate: conditionReader('laminate', 'time', 'laminate 90 min to 12 h at 20 degC'),
  demould: conditionReader('demould', 'time', 'demould 18 h at 23 degC'),
  cure: conditionReader('cure', 'time', 'cure 60 min at 120 degC'),
  postcure: conditionReader('postcure', 'time', 'postcure 8 h at 60 degC'),
  tg: conditionReader('glassTransition', 'temperature', 'tg 66 degC after 8 h at 50 degC'),
  barcol: amountReader('barcol', 'number', 'barcol 40'),
  freezer: conditionReaderOne('freezer', 'freezer 12 months at -18 degC'),
  out_life: conditionReaderOne('outLife', 'out_life 21 days at 21 degC'),
  thaw: amountReader('thaw', 'time', 'thaw 6 h'),
  modulus: conditionReader('modulus', 'pressure', 'modulus 73 GPa'),
  strength: conditionReader('strength', 'pressure', 'strength 2400 MPa'),
  strain: amountReader('strain', 'ratio', 'strain 2.5 %'),
  poisson: amountReader('poisson', 'number', 'poisson 0.22'),
  shear_modulus: amountReader('shearModulus', 'pressure', 'shear_modulus 27 MPa'),
  shear_strength: amountReader('shearStrength', 'pressure', 'shear_strength 1.15 MPa'),
  compression: amountReader('compression', 'pressure', 'compression 1.3 MPa'),
  limit: amountReader('limit', 'temperature', 'limit 80 degC'),
  bends: conditionReader('bends', 'length', 'bends 1.2 m at 12 mm'),
  surface: amountReader('surface', 'areal weight', 'surface 200 g/m2'),
  moisture: amountReader('moisture', 'ratio', 'moisture <= 12 % by weight', 'mixture'),
  expands: amountReader('expands', 'thermal expansion', 'expands 23e-6 /K'),
  bore: amountReader('bore', 'length', 'bore 10 mm'),
  width: amountReader('width', 'length', 'width 12 mm'),
  thickness: amountReader('thickness', 'length', 'thickness 0.9 mm'),
  weight: amountReader('arealWeight', 'areal weight', 'weight 45 g/m2'),
  takes: amountReader('takes', 'areal weight', 'takes 60 g/m2'),
  life: amountReader('life', 'time', 'life 12 months'),
};

function conditionReaderOne(field: 'freezer' | 'outLife', example: string): Reader {
  return (low, line: FactLine, into) => {
    const list: { freezer?: unknown[] } = {};
    conditionReader<{ freezer: unknown }>('freezer', 'time', example)(low, line, list as { freezer: unknown });
    put(into, field, list.freezer?.[0]);
  };
}
