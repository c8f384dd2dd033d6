/** Uses of a material, and what recipes come to with another. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { CompareMaterialsResult, FindUsesResult, MaterialsResult } from '../../../language/protocol/look-up.ts';
import { type MemoryServer, startMemoryServer } from '../../harness/memory-server.ts';

const materials = `notation 1

shop {
  currency EUR
}

tool plate_tool {
  flat 2 m by 1 m
}

resin clear {
  family epoxy
  mix 100:30 by weight
  density 1.1 g/cm3
  gel 4 h at 20 degC
  price 10 EUR/kg
}

fabric light {
  fibre e_glass
  layers woven 0 deg 200 g/m2, 90 deg 200 g/m2
  fraction 50 % by weight hand
  roll 1270 mm by 50 m
  price 4 EUR/m2
}

fabric heavy {
  fibre e_glass
  layers woven 0 deg 400 g/m2, 90 deg 400 g/m2
  fraction 50 % by weight hand
  roll 1270 mm by 50 m
  price 6 EUR/m2
}

fabric priceless {
  fibre e_glass
  layers woven 0 deg 200 g/m2, 90 deg 200 g/m2
  fraction 50 % by weight hand
  roll 1270 mm by 50 m
  price ?
}
`;

const recipe = (name: string, plies: string) => `notation 1

recipe ${name} {
  part {
    outline rectangle 1000 mm by 500 mm
  }
  stack from tool plate_tool {
${plies}
  }
  process hand with clear at 20 degC {
    lay stack
  }
}
`;

const files = {
  'materials.layup': materials,
  'one.layup': recipe('one', '    ply first light at 0 deg, net\n    ply second light at 90 deg, net'),
  'two.layup': recipe('two', '    ply only heavy at 0 deg, net'),
};

let server: MemoryServer;
beforeAll(async () => {
  server = await startMemoryServer(files);
  await server.open('one.layup', files['one.layup']);
  await server.settled();
});
afterAll(() => server.stop());

const compare = (material: string) =>
  server.client.sendRequest<CompareMaterialsResult>('laybook/compareMaterials', { material });
const changeOf = ({ candidates }: CompareMaterialsResult, name: string) =>
  candidates.find((candidate) => candidate.name === name)?.changes[0];

describe('the uses of a material', () => {
  it('are the recipes that name it, with the lines and with what they weigh and cost', async () => {
    const found = await server.client.sendRequest<FindUsesResult>('laybook/findUses', { material: 'light' });
    expect(found.recipes.map(({ recipe }) => recipe)).toEqual(['one']);
    const [one] = found.recipes;
    // two plies of 400 g/m2 at half the weight on 0.5 m2
    expect(one?.figures.mass).toBe('800 g');
    expect(one?.uses.map(({ words }) => words)).toEqual(['ply first light at 0 deg', 'ply second light at 90 deg']);
    expect(one?.uses.map(({ place }) => place.line)).toEqual([7, 8]);
  });

  it('are found from the name at the cursor', async () => {
    const at = { uri: server.uriOf('one.layup'), position: { line: 7, character: 15 } };
    expect((await server.client.sendRequest<FindUsesResult>('laybook/findUses', { at })).material).toBe('light');
    const { here, materials: all } = await server.client.sendRequest<MaterialsResult>('laybook/materials', { at });
    expect(here).toBe('light');
    expect(all.find(({ name }) => name === 'clear')?.recipes).toBe(2);
    expect(all.find(({ name }) => name === 'priceless')?.recipes).toBe(0);
  });

  it('are none for a name that there is not', async () => {
    const found = await server.client.sendRequest<FindUsesResult>('laybook/findUses', { material: 'nothing_such' });
    expect(found).toEqual({ recipes: [] });
  });
});

describe('comparing materials', () => {
  it('tells the change of mass and thickness: twice the cloth, twice the laminate', async () => {
    const answer = await compare('light');
    const heavy = changeOf(answer, 'heavy');
    expect(answer.recipes[0]?.figures.mass).toBe('800 g');
    expect(heavy?.changes.mass).toBe('+800 g');
    expect(heavy?.figures.mass).toBe('1.6 kg');
    expect(heavy?.changes.thickness).toMatch(/^\+/);
  });

  it('and back again, with the sign turned round', async () => {
    expect(changeOf(await compare('heavy'), 'light')?.changes.mass).toBe('\u2212400 g');
  });

  it('says what stays the same and what cannot be told, and why', async () => {
    const change = changeOf(await compare('light'), 'priceless');
    expect(change?.changes.mass).toBe('the same');
    expect(change?.changes.cost).toBe('cannot tell');
    expect(change?.missing).toBeTruthy();
  });

  it('offers nothing but materials of the kind, those of the workspace before those of stock', async () => {
    const { candidates } = await compare('clear');
    const names = candidates.map(({ name }) => name);
    expect(names).not.toContain('clear');
    expect(names).not.toContain('heavy');
    expect(names.length).toBeGreaterThan(2);
    expect(candidates.map(({ stock }) => stock)).toEqual(candidates.map(({ stock }) => stock).sort());
  });

  it('names the rules that would find more', async () => {
    const { candidates } = await compare('light');
    const found = candidates.flatMap(({ changes }) => changes.flatMap(({ newFindings }) => newFindings));
    expect(found.length).toBeGreaterThan(0);
    expect(changeOf(await compare('light'), 'heavy')?.newFindings).toEqual([]);
  });

  it('edits nothing, and says where the name would be typed over', async () => {
    const before = (await compare('light')).recipes[0];
    expect(before?.ranges.map(({ start, end }) => [start.line, start.character, end.character])).toEqual([
      [7, 14, 19],
      [8, 15, 20],
    ]);
    expect(before?.version).toBe(1);
    expect((await compare('light')).recipes[0]?.figures).toEqual(before?.figures);
  });
});
