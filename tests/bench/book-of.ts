/** Books of any size to measure with: one file of materials and tools, and a file of about 65 lines for each recipe with a record. */

const cloth = (i: number): string => `fabric cloth_${i} "Cloth ${i}" {
  fibre e_glass
  layers stitched 45 deg ${200 + i} g/m2, -45 deg ${200 + i} g/m2
  fraction 52 % by volume infused
  roll 1270 mm by 50 m
  price ${(4 + i / 10).toFixed(2)} EUR/m2
}
`;
const resin = (i: number): string => `resin resin_${i} "Infusion epoxy ${i}" {
  family epoxy
  mix 100:${30 + i} by weight
  density 1.10 g/cm3
  viscosity 290 mPa.s at 23 degC
  pot_life 110 min at 23 degC for 150 g
  gel 240 min at 23 degC
  demould 18 h at 23 degC
  price 15.20 EUR/kg
}
`;
const core = (i: number): string => `core foam_${i} "Foam ${i}" {
  density ${60 + i} kg/m3
  sheet 1220 mm by 2440 mm
  resists styrene
  limit 80 degC
  surface 200 g/m2
  price 21 EUR/m2 at 20 mm
}
`;
const tool = (i: number): string => `tool mould_${i} {
  flat 1600 mm by 700 mm
  flange 110 mm
  limit 90 degC
  count 2
  cost 900 EUR over 150 parts
}
`;
const shop = `shop "Hollow Tarn Workshop" {
  currency EUR
  labour 34 EUR/h
  overhead 12 %
  ambient 21 degC
  elevation 340 m
  pump 15 mbar absolute
  people 2
  scale 0.1 g
}
`;

/** `missing`: the recipe names a cloth that nobody sells. */
export const recipeText = (i: number, missing = false): string => `recipe deck_${i} "Deck ${i}" {
  revision 4
  quantity 12
  let landing = 25 mm
  part {
    outline rounded ${1100 + (i % 90)} mm by 420 mm corner 140 mm
    edge round 8 mm
    ends heel to nose
    zone mount rounded 260 mm by 180 mm corner 40 mm, centred at (210 mm from heel, 0 mm)
  }
  stack from tool mould_${i % 10} {
    ply outer ${missing ? 'cloth_of_nobody' : `cloth_${i % 40}`} at 0 deg, wrap onto body by landing, darts auto, tab 60 mm at heel
    strip keel cloth_${(i + 1) % 40} at 0 deg, 60 mm by 620 mm, centred at (100 mm, 0 mm)
    core body foam_${i % 10} 20 mm, perforate 2 mm every 40 mm, groove for keel
    patch pad cloth_${(i + 2) % 40} at 45 deg, over mount
    ply inner cloth_${(i + 3) % 40} at 0 deg, net, turned over, note "Mark the middle line."
  }
  process infusion with resin_${i % 5} at 23 degC {
    clean mould_${i % 10}
    release semi_permanent, 5 coats new, 1 coat every 4 pulls, 20 min each
    tape sealant_12
    kit {
      tack spray_tack 8 g/m2
      lay outer to body
    }
    lay kit
    lay rest
    peel nylon_85, 80 mm past edge
    mesh mesh_130, 40 mm short of edge
    feed f1 spiral_10 from (90 mm from heel, 0 mm) to (90 mm from nose, 0 mm)
    vent v1 spiral_10 perimeter, 60 mm outside, through tape by tube_10
    trap
    bag film_50, pleats 12 of 50 mm
    leak test 5 mbar in 10 min
    check "No bridging at the edge."
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
  }
  expect mass <= 3 kg
  expect cost <= 400 EUR
  expect thickness at middle 20 mm to 24 mm
}

record deck_${i} 2026-05-14 "no. ${i}" {
  revision 4
  lot resin_${i % 5} "A-1182" expires 2026-11-30
  ambient 19 degC, 60 % RH
  vacuum 22 mbar absolute
  leak 3 mbar in 10 min
  mass 2.1 kg
}
`;

const many = (count: number, entry: (i: number) => string): string =>
  Array.from({ length: count }, (_, i) => entry(i)).join('\n');

export const materialsText = (): string =>
  [shop, many(40, cloth), many(5, resin), many(10, core), many(10, tool)].join('\n');

/** Texts by the names of their files. */
export function bookOf(recipes: number, missing = false): Record<string, string> {
  const files: Record<string, string> = { 'materials.layup': materialsText() };
  for (let i = 0; i < recipes; i++) files[`deck_${i}.layup`] = recipeText(i, missing);
  return files;
}
