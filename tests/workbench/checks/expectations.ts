import assert from 'node:assert/strict';
import { after, describe, it } from 'mocha';
import { find, open, replace, revertAll, until, views } from '../editor.ts';

/** The tests of the sled deck as it is written, once there are some. */
const tests = () =>
  until('tests of the sled deck', async () => {
    const { controller } = (await views()).expectations;
    const root = [...controller.items].map(([, item]) => item).find(({ label }) => label === 'sled_deck');
    return root && root.children.size > 0 ? root.children : undefined;
  });

const described = (id: string, pattern: RegExp) =>
  until(`${id} as ${pattern}`, async () => {
    const item = (await tests()).get(id);
    return item && pattern.test(item.description ?? '') ? item : undefined;
  });

describe('expect lines in the Testing view', () => {
  after(revertAll);

  it('are one test a line, where the line is', async () => {
    const deck = await open('sled_deck.layup');
    const items = await tests();
    const lines = deck.getText().match(/^ {2}expect /gm) ?? [];
    assert.equal(items.size, lines.length);
    const mass = items.get('mass');
    assert.equal(mass?.range?.start.line, find(deck, /^ *expect (mass)/).start.line);
    assert.match(mass?.description ?? '', /^\d.*kg/);
  });

  it('say of what nothing computes yet that it is so', async () => {
    await described('fill', /not computed yet/);
  });

  it('change with the figures, in place: the same items under the same ids', async () => {
    const deck = await open('sled_deck.layup');
    const items = await tests();
    const mass = items.get('mass');
    const before = mass?.description;
    await replace(deck, find(deck, /^ *core body foam_80 (20 mm)/), '30 mm');
    const heavier = await described('mass', new RegExp(`^(?!${before?.replace(/[.()]/g, '\\$&')}).*kg`));
    assert.equal(heavier, mass);
    await replace(deck, find(deck, /^ *expect mass <= (2\.3)/), '0.1');
    await until('the test of the other limit', async () => (mass?.label === 'mass <= 100 g' ? true : undefined));
    assert.equal((await tests()).get('mass'), mass);
    assert.match(mass?.description ?? '', /^\d.*\(.*kg\)$/);
  });

  it('stay while a line of the recipe is half typed', async () => {
    await revertAll();
    const deck = await open('sled_deck.layup');
    await described('mass', /^\d[^()]*$/);
    const items = await tests();
    const count = items.size;
    await replace(deck, find(deck, /^ *expect cost <= (290 EUR)/), '(');
    await new Promise((resolve) => setTimeout(resolve, 800));
    assert.equal((await tests()).size, count);
    assert.match((await tests()).get('mass')?.description ?? '', /^\d/);
  });
});
