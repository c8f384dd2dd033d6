import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { find, findingsOf, hoverAt, open } from '../editor.ts';

describe('hover', () => {
  it('tells what a layer weighs', async () => {
    const document = await open('sled_deck.layup');
    const name = find(document, /^ *ply (\w+)/);
    assert.match(await hoverAt(document, name.start), /\d\s*k?g\b/);
  });

  it('tells what a material is', async () => {
    const document = await open('sled_deck.layup');
    const material = find(document, /^ *ply \w+ (\w+)/);
    assert.match(await hoverAt(document, material.start), /g\/m2|g\/m²/);
  });

  it('tells what a word means, and keeps the finding of the line', async () => {
    const document = await open('first_try.layup');
    const [finding] = await findingsOf(document, 'wrap/short');
    assert.ok(finding);
    assert.match(await hoverAt(document, find(document, /^ *(stack)\b/).start), /\w{4}/);
  });
});
