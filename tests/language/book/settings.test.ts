import { describe, expect, it } from 'vitest';
import { defaultSettings, readSettings, type Settings } from '../../../language/book/settings.ts';
import { openBook } from '../../harness/book.ts';

describe('settings', () => {
  it('takes what is understood and leaves the rest as if it were not set', () => {
    expect(
      readSettings({
        units: 'both',
        severities: { 'wrap/short': 'off', 'bag/few-pleats': 'loud', 'core/x': 3 },
        hints: { cost: true, mass: 'no', weight: true },
        lens: false,
      }),
    ).toEqual({
      units: 'both',
      severities: { 'wrap/short': 'off' },
      hints: { ...defaultSettings.hints, cost: true },
      lens: false,
    });
    for (const nonsense of [
      undefined,
      null,
      7,
      'us',
      [],
      { units: 'metric', severities: 'off' },
      { severities: null },
      { hints: null, lens: 'on' },
    ]) {
      expect(readSettings(nonsense)).toEqual(defaultSettings);
    }
  });

  it('are fetched when the editor is there, and asked for again when it only says that they changed', async () => {
    const { settings } = (await openBook({})).services;
    const seen: Settings[] = [];
    settings.onChange((next) => seen.push(next));
    let units = 'us';
    settings.initialize({ capabilities: { workspace: { configuration: true } } } as never);
    await settings.initialized({
      fetchConfiguration: async (items) => items.map(({ section }) => (section === 'laybook' ? { units } : null)),
    });
    expect(settings.current.units).toBe('us');
    units = 'both';
    settings.updateConfiguration({ settings: null });
    await expect.poll(() => settings.current.units).toBe('both');
    settings.updateConfiguration({ settings: { laybook: { units: 'both' } } });
    settings.updateConfiguration({ settings: { other: { units: 'si' } } });
    await new Promise((resolve) => setTimeout(resolve, 5));
    expect(seen.map((one) => one.units)).toEqual(['us', 'both']);
  });
});
