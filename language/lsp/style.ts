import type { LayupServices } from '../book/services.ts';
import type { Style } from '../view/text.ts';

/** How figures are shown in every view: the units that are set, and the numbers of the editor's language. */
export function styleOf({ settings }: LayupServices): Style {
  const { locale } = settings;
  return { units: settings.current.units, ...(locale === undefined ? {} : { locale }) };
}
