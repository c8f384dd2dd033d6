import { expect, it } from 'vitest';
import { recipeHeadAt, recipeNear } from '../../extension/recipe-head.ts';

const lines = `notation 1

recipe deck "Deck" {
  part {
  }
  size short {
    quantity 4
  }
}

tool board {
}
recipe lid {
}`.split('\n');

const at = (line: number) => recipeHeadAt((index) => lines[index] ?? '', lines.length, line);

it.each([
  [0, undefined],
  [2, { recipe: 'deck' }],
  [4, { recipe: 'deck' }],
  [6, { recipe: 'deck', size: 'short' }],
  [11, undefined],
  [12, { recipe: 'lid' }],
  [99, { recipe: 'lid' }],
])('line %i belongs to %o', (line, head) => {
  expect(at(line)).toEqual(head);
});

it('outside of all recipes a command is about the first one of the file', () => {
  const near = (line: number) => recipeNear((index) => lines[index] ?? '', lines.length, line);
  expect([0, 6, 11, 12].map(near)).toEqual([
    { recipe: 'deck' },
    { recipe: 'deck', size: 'short' },
    { recipe: 'deck' },
    { recipe: 'lid' },
  ]);
  expect(recipeNear(() => 'tool board {', 1, 0)).toBeUndefined();
});
