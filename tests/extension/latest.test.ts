/** The newest request counts, and none is lost. */
import { expect, it, vi } from 'vitest';
import { Latest } from '../../extension/latest.ts';

it('does what was asked for while it worked once more, and no more often', async () => {
  vi.useFakeTimers();
  let asked = 0;
  let finish: () => void = () => undefined;
  const seen: number[] = [];
  const latest = new Latest(async () => {
    const mine = asked;
    await new Promise<void>((resolve) => {
      finish = resolve;
    });
    seen.push(mine);
  }, 50);
  const request = () => {
    asked++;
    latest.request();
  };

  for (let i = 0; i < 5; i++) request();
  await vi.advanceTimersByTimeAsync(60);
  for (let i = 0; i < 5; i++) request();
  finish();
  await vi.advanceTimersByTimeAsync(60);
  finish();
  await vi.advanceTimersByTimeAsync(200);
  expect(seen).toEqual([5, 10]);

  request();
  latest.dispose();
  await vi.advanceTimersByTimeAsync(200);
  expect(seen).toEqual([5, 10]);
  vi.useRealTimers();
});
