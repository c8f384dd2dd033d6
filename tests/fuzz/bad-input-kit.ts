/** A text that nobody should write, and what must be said of it. */
export interface BadInput {
  readonly name: string;
  readonly text: () => string;
  /** a rule that must report it; `clean` where nothing is an error */
  readonly told: RegExp | 'clean';
}

export const recipe = (body: string): string => `recipe bad "Bad" {\n${body}\n}\n`;
export const stack = (body: string): string => recipe(`  stack from tool sled_tool {\n${body}\n  }`);
export const part = (outline: string): string => recipe(`  part {\n    outline ${outline}\n    edge square\n  }`);
export const material = (facts: string): string => `resin bad_resin "Bad" {\n  family epoxy\n${facts}\n}\n`;
export const many = (count: number, line: (index: number) => string, join = '\n'): string =>
  Array.from({ length: count }, (_, index) => line(index)).join(join);

export const ply = '    ply one biax_440 at 0 deg';
/** A whole recipe, so that figures are worked out from the bad value in it. */
export const built = (quantity: string): string =>
  `recipe bad "Bad" {
  quantity 2
  part {
    outline rounded ${quantity} by ${quantity} corner 10 mm
    edge round 8 mm
    ends heel to nose
  }
  stack from tool sled_tool {
    ply outer biax_440 at 0 deg, wrap onto body by ${quantity}, darts auto
    core body foam_80 ${quantity}, perforate ${quantity} every ${quantity}
    ply inner biax_440 at 0 deg, inset ${quantity}
  }
  process infusion with epoxy_slow at 23 degC {
    clean sled_tool
    peel nylon_85, ${quantity} past edge
    mesh mesh_130, ${quantity} short of edge
    bag film_50, pleats 12 of ${quantity}
    infuse {
      vacuum 50 mbar absolute until gel
    }
    cure {
      hold 24 h at 23 degC
    }
  }
  expect mass <= 2 kg
}
`;
