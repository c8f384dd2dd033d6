/** The `expect` lines of a file as the Testing view of the editor asks for them. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ExpectationsResult, FiguresChanged, RecipeFilesResult } from '../../../language/protocol/expectations.ts';
import { type MemoryServer, startMemoryServer } from '../../harness/memory-server.ts';

const plate = (more: string) => `notation 1

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

fabric cross {
  fibre e_glass
  layers stitched 45 deg 200 g/m2, -45 deg 200 g/m2
  fraction 50 % by weight hand
  roll 1270 mm by 50 m
  price 4 EUR/m2
}

recipe plate {
  part {
    outline rectangle 1000 mm by 500 mm
  }
  stack from tool plate_tool {
    ply one cross at 0 deg, net
  }
  process hand with clear at 20 degC {
    lay stack
  }
${more}
  size half {
    outline rectangle 500 mm by 500 mm
  }
}
`;

const lines =
  '  expect mass <= 300 g\n  expect length <= 1200 mm\n  expect sag <= 3 mm\n  expect barcol >= 30\n  expect mass >= 100 g';
const text = plate(lines);

let server: MemoryServer;
const changed: string[][] = [];
beforeAll(async () => {
  server = await startMemoryServer({ 'plate.layup': text });
  server.client.onNotification('laybook/figuresChanged', ({ uris }: FiguresChanged) => void changed.push([...uris]));
  await server.open('plate.layup', text);
  await server.settled();
});
afterAll(() => server.stop());

const ask = () =>
  server.client.sendRequest<ExpectationsResult>('laybook/expectations', { uri: server.uriOf('plate.layup') });

async function type(next: string) {
  await server.change('plate.layup', { text: next });
  await server.settled();
  return ask();
}

describe('expect lines as tests', () => {
  it('tell verdict, expected and actual: 400 g of laminate against 300 g', async () => {
    const { recipes } = await ask();
    expect(recipes.map(({ recipe, size }) => [recipe, size])).toEqual([
      ['plate', undefined],
      ['plate', 'half'],
    ]);
    const [mass, length] = recipes[0]?.expects ?? [];
    expect(mass).toMatchObject({
      id: 'mass',
      verdict: 'not met',
      expected: '<= 300 g',
      actual: '400 g',
      beyond: '100 g',
    });
    expect(length).toMatchObject({ id: 'length', verdict: 'met' });
    expect(recipes[1]?.expects[0]).toMatchObject({ verdict: 'met', actual: '200 g' });
  });

  it('tell what nothing computes yet, and what is measured at the bench, and why', async () => {
    const expects = (await ask()).recipes[0]?.expects ?? [];
    const [sag, barcol] = [expects[2], expects[3]];
    expect(sag).toMatchObject({ verdict: 'not yet' });
    expect(sag?.why[0]?.words).toMatch(/not computed yet/);
    expect(barcol).toMatchObject({ verdict: 'cannot tell' });
    expect(barcol?.why[0]?.words).toMatch(/bench/);
  });

  it('stand on their lines', async () => {
    const expects = (await ask()).recipes[0]?.expects ?? [];
    const first = text.split('\n').findIndex((line) => line.includes('expect mass <='));
    expect(expects.map(({ range }) => range.start.line)).toEqual([0, 1, 2, 3, 4].map((n) => first + n));
  });

  it('keep their ids while a limit is typed over and lines come and go before them', async () => {
    const ids = async (next: string) => (await type(next)).recipes[0]?.expects.map(({ id }) => id);
    expect(await ids(text)).toEqual(['mass', 'length', 'sag', 'barcol', 'mass #2']);
    expect(await ids(text.replace('<= 300 g', '<= 410 g'))).toEqual(['mass', 'length', 'sag', 'barcol', 'mass #2']);
    expect(await ids(text.replace('  expect length <= 1200 mm\n', ''))).toEqual(['mass', 'sag', 'barcol', 'mass #2']);
    await type(text);
  });

  it('say so while the recipe cannot be read', async () => {
    const { recipes } = await type(text.replace('expect length <= 1200 mm', 'expect length <= 1200 mm ]'));
    expect(recipes[0]?.broken).toBe(true);
    expect((await type(text)).recipes[0]?.broken).toBe(false);
  });
});

describe('figures that changed', () => {
  it('are told of after an edit, with the files that it reaches', async () => {
    changed.length = 0;
    const { version } = await type(text.replace('<= 300 g', '<= 500 g'));
    expect(changed.flat()).toContain(server.uriOf('plate.layup'));
    expect(version).toBeGreaterThan(1);
    expect((await ask()).recipes[0]?.expects[0]?.verdict).toBe('met');
  });
});

describe('files of the book', () => {
  it('are listed for an editor that cannot search its folders: those of the workspace, none of the stock library', async () => {
    const { uris } = await server.client.sendRequest<RecipeFilesResult>('laybook/recipeFiles', {});
    expect(uris).toContain(server.uriOf('plate.layup'));
    expect(uris.filter((uri) => !uri.startsWith(server.uriOf('')))).toEqual([]);
  });
});
