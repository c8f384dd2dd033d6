import { type AstNode, AstUtils, type LangiumDocument, type URI } from 'langium';
import { describe, expect, it } from 'vitest';
import { knownProperties } from '../../../language/book/namespaces.ts';
import { LayupAstReflection } from '../../../language/grammar/generated/ast.ts';
import { openBook } from '../../harness/book.ts';
import { meanings } from './where.ts';

const materials = `
fabric triax_680 "Triax" {
  fibre e_glass
}
resin epoxy {
  family epoxy
}
tool sled_tool {
  count 2
}
`;

describe('names over the files of a book', () => {
  it('finds materials, tools and recipes of other files', async () => {
    const book = await openBook({
      'shop.layup': materials,
      'deck.layup': `recipe deck {
  stack from tool sled_tool {
    ply outer triax_680 at 0 deg
  }
  process infusion with epoxy {
    clean sled_tool
  }
}
`,
      'records/one.layup': 'record deck 2026-05-14 {\n  lot triax_680 "G-0377"\n}\n',
    });
    expect(meanings(book, 'deck.layup', 'sled_tool')).toEqual([
      'shop.layup Tool sled_tool',
      'shop.layup Tool sled_tool',
    ]);
    expect(meanings(book, 'deck.layup', 'triax_680')).toEqual(['shop.layup Material triax_680']);
    expect(meanings(book, 'deck.layup', 'epoxy')).toEqual(['shop.layup Material epoxy']);
    expect(meanings(book, 'records/one.layup', 'deck')).toEqual(['deck.layup Recipe deck']);
    expect(meanings(book, 'records/one.layup', 'triax_680')).toEqual(['shop.layup Material triax_680']);
  });

  it('takes a word of a fact for a choice, never for a material', async () => {
    const book = await openBook({ 'shop.layup': materials });
    expect(meanings(book, 'shop.layup', 'epoxy')).toEqual([undefined]);
  });

  it('puts an entry of the workspace before that of stock', async () => {
    const text = 'recipe a {\n  stack {\n    ply p csm_300\n    ply q csm_450\n  }\n}\n';
    const book = await openBook({ 'a.layup': text, 'shop.layup': 'fabric csm_300 {\n  fibre e_glass\n}\n' });
    expect(meanings(book, 'a.layup', 'csm_300')).toEqual(['shop.layup Material csm_300']);
    expect(meanings(book, 'a.layup', 'csm_450')).toEqual(['layup-stock:/fabrics-glass.layup Material csm_450']);
  });

  it('reads no stock file until a name of it is asked for', async () => {
    const book = await openBook({ 'a.layup': 'tool t {\n  count 1\n}\n' });
    expect(book.services.stock.filesRead).toEqual([]);
    await book.edit('a.layup', 'fabric own {\n  fibre e_glass\n}\n');
    expect(meanings(book, 'a.layup', 'e_glass')).toEqual(['layup-stock:/fibres.layup Material e_glass']);
    expect(book.services.stock.filesRead).toEqual(['fibres.layup']);
  });

  it('knows the place of every entry of stock without reading it', async () => {
    const book = await openBook({});
    const { stock } = book.services;
    expect(stock.entries.length).toBeGreaterThan(50);
    for (const entry of stock.entries) {
      const description = stock.find(entry.kind === 'tool' ? 'tool' : 'material', entry.name);
      const document = stock.document(description?.documentUri as URI) as LangiumDocument;
      const node = book.services.workspace.AstNodeLocator.getAstNode(
        document.parseResult.value,
        description?.path ?? '',
      );
      expect(node).toMatchObject({ name: entry.name, kind: entry.kind, title: entry.title });
      expect(node?.$cstNode?.range.start.line).toBe(entry.line);
    }
  });

  it('reads `like stock` as the stock entry of the same name, `like x` as x', async () => {
    const book = await openBook({
      'shop.layup':
        'fabric csm_300 like stock {\n  price 2 EUR/m2\n}\nfabric csm_301 like csm_300 {\n  price 3 EUR/m2\n}\nfabric unheard_of like stock {\n}\n',
    });
    expect(meanings(book, 'shop.layup', 'stock')).toEqual([
      'layup-stock:/fabrics-glass.layup Material csm_300',
      undefined,
    ]);
    expect(meanings(book, 'shop.layup', 'csm_300')).toEqual(['shop.layup Material csm_300']);
  });

  it('takes the first of two entries with one name, in the order of the files, and keeps both', async () => {
    const entry = (count: number): string => `tool twice {\n  count ${count}\n}\n`;
    const book = await openBook({
      'b.layup': entry(2),
      'a.layup': `${entry(1)}${entry(3)}`,
      'r.layup': 'recipe r {\n  stack from tool twice {\n  }\n}\n',
    });
    expect(meanings(book, 'r.layup', 'twice')).toEqual(['a.layup Tool twice']);
    const files = (): string[] => book.services.names.entries('tool', 'twice').map((entry) => entry.documentUri.path);
    expect(files()).toEqual(['/book/a.layup', '/book/a.layup', '/book/b.layup']);
    await book.edit('a.layup', 'tool other {\n}\n');
    expect(files()).toEqual(['/book/b.layup']);
    expect(meanings(book, 'r.layup', 'twice')).toEqual(['b.layup Tool twice']);
    await book.edit('a.layup', entry(1));
    expect(files()).toEqual(['/book/a.layup', '/book/b.layup']);
    expect(meanings(book, 'r.layup', 'twice')).toEqual(['a.layup Tool twice']);
  });
});

describe('names inside a recipe', () => {
  const base = `recipe base {
  let landing = 25 mm
  part {
    zone mount rectangle 20 mm by 20 mm
  }
  stack {
    core body foam_80 20 mm, groove for keel
    repeat 3 {
      ply mat csm_450, wrap onto body by landing
      strip keel csm_300
    }
    patch pad csm_300, over mount
    mirror about body
  }
  process infusion with epoxy_slow {
    lay mat.1 to keel.2
    lay pad.m
    kit {
      feed f1 spiral_10
    }
    infuse {
      open f1
    }
    drill 8 holes in mat.3
  }
  load rider {
    weight 95 kg
  }
  expect sag under rider <= 12 mm
  size short {
    let landing = 20 mm
    change pad, darts 16
    change mat, wrap onto body by landing
  }
}
`;

  it('finds layers of groups, copies, zones, feeds, lets and loads', async () => {
    const book = await openBook({ 'a.layup': base });
    const means = (text: string) => meanings(book, 'a.layup', text);
    expect(means('body')).toEqual(Array(3).fill('a.layup CoreLayer body'));
    expect(means('keel')).toEqual(['a.layup ClothLayer keel']);
    expect(means('mat.1')).toEqual(['a.layup ClothLayer mat']);
    expect(means('keel.2')).toEqual(['a.layup ClothLayer keel']);
    expect(means('pad.m')).toEqual(['a.layup ClothLayer pad']);
    expect(means('mat.3')).toEqual(['a.layup ClothLayer mat']);
    expect(means('mount')).toEqual(['a.layup Zone mount']);
    expect(means('f1')).toEqual(['a.layup Port f1']);
    expect(means('rider')).toEqual(['a.layup Load rider']);
    expect(means('pad')).toEqual(['a.layup ClothLayer pad']);
  });

  it("takes a size's own let before the recipe's", async () => {
    const book = await openBook({ 'a.layup': base });
    const lets = [...AstUtils.streamAst(book.document('a.layup').parseResult.value)].flatMap((node) =>
      node.$type === 'LetReference'
        ? [(node as unknown as { target: { ref: { $container: { $type: string } } } }).target.ref.$container.$type]
        : [],
    );
    expect(lets).toEqual(['Recipe', 'Size']);
  });

  it('sees the names of the recipe that it is like, and of a process that it is like', async () => {
    const book = await openBook({
      'a.layup': base,
      'b.layup': 'recipe narrow like base {\n  change pad, darts 8\n  without keel\n}\n',
      'c.layup':
        'recipe other {\n  process infusion like base {\n    infuse {\n      open f1\n    }\n    lay pad\n  }\n}\n',
      'd.layup': 'record narrow short 2026-05-14 {\n  mass 1 kg\n}\n',
    });
    expect(meanings(book, 'b.layup', 'pad')).toEqual(['a.layup ClothLayer pad']);
    expect(meanings(book, 'b.layup', 'keel')).toEqual(['a.layup ClothLayer keel']);
    expect(meanings(book, 'c.layup', 'f1')).toEqual(['a.layup Port f1']);
    expect(meanings(book, 'c.layup', 'pad')).toEqual([undefined]);
    expect(meanings(book, 'd.layup', 'short')).toEqual(['a.layup Size short']);
  });

  it('ends where likenesses go round in a circle', async () => {
    const book = await openBook({
      'a.layup': 'recipe a like b {\n  without nothing\n}\n',
      'b.layup': 'recipe b like a {\n  without nothing\n}\n',
      'c.layup': 'recipe c like c {\n  without nothing\n}\n',
    });
    for (const file of ['a.layup', 'b.layup', 'c.layup']) expect(meanings(book, file, 'nothing')).toEqual([undefined]);
  });

  it('does not show a recipe the names of another', async () => {
    const book = await openBook({ 'a.layup': base, 'b.layup': 'recipe b {\n  process hand {\n    lay pad\n  }\n}\n' });
    expect(meanings(book, 'b.layup', 'pad')).toEqual([undefined]);
  });

  it('offers what may stand at a place, nearest first', async () => {
    const book = await openBook({ 'a.layup': base, 'b.layup': 'fabric own {\n}\ntool mould {\n}\n' });
    const at = (type: string, property: string): string[] => {
      const node = [...AstUtils.streamAst(book.document('a.layup').parseResult.value)].find(
        (one) => one.$type === type,
      ) as AstNode;
      return [...book.services.names.candidates(node, property)].map((one) => one.name);
    };
    expect(at('Lay', 'first')).toEqual(['body', 'mat', 'keel', 'pad']);
    expect(at('Stack', 'tool')).toEqual(['mould']);
    expect(at('Process', 'base')).toEqual(['base']);
    expect(at('ClothLayer', 'material').slice(0, 1)).toEqual(['own']);
    expect(at('ClothLayer', 'material')).toContain('csm_300');
    expect(book.services.stock.filesRead).not.toContain('resins-epoxy.layup');
  });
});

it('the table says for every reference of the grammar where its name is looked for', () => {
  const reflection = new LayupAstReflection();
  const properties = Object.entries(reflection.types).flatMap(([type, { properties }]) =>
    Object.entries(properties).flatMap(([property, { referenceType }]) =>
      referenceType === undefined ? [] : [`${type}:${property}`],
    ),
  );
  expect([...knownProperties].sort()).toEqual(properties.sort());
});
