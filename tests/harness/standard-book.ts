import { standardDrawings } from './standard-drawings.ts';

/**
 * The book that the fragments of rule pages are put into: a recipe that no rule finds fault with. What a fragment says takes
 * the place of the block of the same kind; entries of a fragment go into the book beside it.
 */
export const standardShop = `shop "Hollow Tarn Workshop" {
  currency EUR
  labour 34 EUR/h
  overhead 12 %
  ambient 21 degC
  humidity 55 % RH
  elevation 340 m
  pump 15 mbar absolute
  people 2
  scale 0.1 g
  oven 2400 mm by 1200 mm by 900 mm, limit 140 degC
}
`;

export const standardTools = `tool bench_tool {
  flat 1600 mm by 700 mm
  flange 110 mm
  limit 90 degC
  count 2
  cost 900 EUR over 150 parts
}
`;

/** What the standard recipe uses beside the stock library. */
export const standardMaterials = `resin epoxy_slow "Infusion epoxy, slow hardener" {
  family epoxy
  mix 100:31 by weight
  density 1.10 g/cm3
  viscosity 290 mPa.s at 23 degC
  pot_life 110 min at 23 degC for 150 g
  gel 240 min at 23 degC
  demould 18 h at 23 degC
  tg 42 degC after 24 h at 23 degC
  tg 66 degC after 8 h at 50 degC
  price 15.20 EUR/kg
}

core foam_80 "Closed-cell foam, 80 kg/m3" {
  density 80 kg/m3
  shear_modulus 27 MPa
  shear_strength 1.15 MPa
  sheet 1220 mm by 2440 mm
  resists styrene
  limit 80 degC
  surface 200 g/m2
  price 33 EUR/m2 at 20 mm
}
`;

/** Blocks of the standard recipe, by the word that they begin with. */
export const standardBlocks: Readonly<Record<string, string>> = {
  revision: '  revision 1',
  quantity: '  quantity 2',
  part: `  part {
    outline rounded 1180 mm by 420 mm corner 140 mm
    edge round 8 mm
    ends heel to nose
  }`,
  stack: `  stack from tool bench_tool {
    ply outer biax_440 at 0 deg, wrap onto body by 25 mm, darts auto
    core body foam_80 20 mm, perforate 2 mm every 40 mm
    ply inner biax_440 at 0 deg, net
  }`,
  process: `  process infusion with epoxy_slow at 23 degC {
    clean bench_tool
    release semi_permanent, 5 coats new, 1 coat every 4 pulls, 20 min each
    tape sealant_12
    lay stack
    peel nylon_85, 60 mm past edge
    mesh mesh_130, 40 mm short of edge
    feed f1 spiral_10 from (90 mm from heel, 0 mm) to (90 mm from nose, 0 mm)
    vent v1 spiral_10 perimeter, 50 mm outside, through tape by tube_10
    trap
    bag film_50, pleats 12 of 50 mm
    leak test 5 mbar in 10 min
    infuse {
      open f1
      clamp f1 when full
      vacuum 50 mbar absolute until gel
    }
    cure {
      hold 24 h at 23 degC
      ramp 10 K/h to 50 degC
      hold 8 h at 50 degC
    }
    demould
    trim flash
    weigh
  }`,
};

/** In the part of a fragment that speaks of it: elsewhere nothing would. */
const ZONE = 'zone mount rounded 260 mm by 180 mm corner 40 mm, centred at (210 mm from heel, 0 mm)';

const standardFiles: Readonly<Record<string, string>> = {
  'shop.layup': standardShop,
  'tools.layup': standardTools,
  'materials.layup': standardMaterials,
  ...standardDrawings,
};

const entryWords = new Set(
  'shop fibre fabric prepreg resin gelcoat catalyst paste core consumable tool recipe record notation'.split(' '),
);
const layerWords = new Set('coat ply strip patch core insert repeat mirror'.split(' '));

/** Files of the book with a fragment in its place, and where the fragment begins. */
export interface Placed {
  readonly files: Readonly<Record<string, string>>;
  /** the file that holds the fragment */
  readonly file: string;
  /** line of that file on which the fragment begins, from 0 */
  readonly line: number;
}

/**
 * A fragment at the left margin that begins with an entry word is a file of its own (one that holds `shop` takes the place of the
 * standard shop). Indented layer lines are the body of the stack. Anything else is one or more blocks of the recipe.
 */
export function placeFragment(code: string): Placed {
  const first = code.split('\n').find((line) => line.trim() !== '' && !line.trim().startsWith('//')) ?? '';
  const word = /^\s*([a-z_]+)/.exec(first)?.[1] ?? '';
  if (!/^\s/.test(first) && (entryWords.has(word) || /^\S/.test(first))) {
    const files = /^shop\b/m.test(code)
      ? { 'tools.layup': standardTools, 'materials.layup': standardMaterials }
      : standardFiles;
    return { files: { ...files, 'fragment.layup': `${code}\n` }, file: 'fragment.layup', line: 0 };
  }
  const body = layerWords.has(word) ? `  stack from tool bench_tool {\n${code}\n  }` : code;
  const own = new Set(body.split('\n').flatMap((line) => /^ {2}([a-z_]+)/.exec(line)?.[1] ?? []));
  const rest = Object.entries(standardBlocks)
    .filter(([key]) => !own.has(key))
    .map(([key, block]) =>
      key === 'part' && /\bmounts?\b/.test(body) ? block.replace(/\n {2}\}$/, `\n    ${ZONE}\n  }`) : block,
    );
  const before = ['recipe sample_deck "Standard part" {', ...rest].join('\n');
  const line = before.split('\n').length + (layerWords.has(word) ? 1 : 0);
  return { files: { ...standardFiles, 'fragment.layup': `${before}\n${body}\n}\n` }, file: 'fragment.layup', line };
}
