/** The files of a new workshop have nothing to mend, whatever was answered. */
import { expect, it } from 'vitest';
import { currencies, newWorkshop } from '../../extension/new/workshop.ts';
import { wordAt } from '../../language/words/index.ts';
import { folderOf, laybook } from '../harness/terminal.ts';

async function foundIn(files: Readonly<Record<string, string>>): Promise<readonly string[]> {
  const { folder, dispose } = folderOf(files);
  try {
    const { out } = await laybook(folder, 'check', '.', '--format', 'json');
    return (JSON.parse(out).findings as readonly { rule: string; message: string }[]).map(
      ({ rule, message }) => `${rule}: ${message}`,
    );
  } finally {
    dispose();
  }
}

it.each(currencies)('reckons in %s', async (currency) => {
  expect(await foundIn(newWorkshop({ name: 'Hollow Tarn Workshop', currency, elevation: 340 }))).toEqual([]);
});

it('takes any name, also with quotation marks, and a place below the sea', async () => {
  const files = newWorkshop({ name: 'The "Old" Boat\\Shed\n', currency: 'EUR', elevation: -3 });
  expect(files['shop.layup']).toContain('shop "The  Old  Boat Shed" {');
  expect(await foundIn(files)).toEqual([]);
});

it('offers every currency that the notation knows, and no other', () => {
  const known = wordAt('currency', 'shop')?.takes?.[0]?.words;
  expect([...currencies].sort()).toEqual([...(known ?? [])].sort());
});
