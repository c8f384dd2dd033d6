import { type ConfigurationInitializedParams, DefaultConfigurationProvider, Disposable } from 'langium';
import { type HintChoice, hintKinds } from '../protocol/hint-kinds.ts';
import { readTranslation, useTranslation } from '../view/translation.ts';

const severities = ['error', 'warning', 'info', 'off'] as const;
const units = ['si', 'us', 'both'] as const;

export interface Settings {
  /** how much a rule matters here, by its name */
  readonly severities: Readonly<Record<string, (typeof severities)[number]>>;
  /** units of the figures that are shown */
  readonly units: (typeof units)[number];
  /** figures beside the lines, kind by kind */
  readonly hints: HintChoice;
  /** what a recipe comes to, above it */
  readonly lens: boolean;
}

export const defaultSettings: Settings = {
  severities: {},
  units: 'si',
  hints: { mass: true, thickness: true, cost: false, minutes: true, amount: false },
  lens: true,
};

const section = 'laybook';

/** The settings under `laybook`, as the editor says them; what is not understood counts as not set. */
export class SettingsProvider extends DefaultConfigurationProvider {
  #current = defaultSettings;
  #locale: string | undefined;
  #commandLinks = false;
  readonly #listeners = new Set<(settings: Settings) => void>();
  #fetch: ConfigurationInitializedParams['fetchConfiguration'];

  get current(): Settings {
    return this.#current;
  }

  /** The editor runs commands by links in what it shows. */
  get commandLinks(): boolean {
    return this.#commandLinks;
  }

  /** The language of the editor (BCP 47), for numbers; none where it does not say. */
  get locale(): string | undefined {
    return this.#locale;
  }

  /** Calls back after each change of a setting. */
  onChange(listener: (settings: Settings) => void): Disposable {
    this.#listeners.add(listener);
    return Disposable.create(() => this.#listeners.delete(listener));
  }

  override initialize(params: Parameters<DefaultConfigurationProvider['initialize']>[0]): void {
    const { locale, translation, commandLinks } = (params.initializationOptions ?? {}) as {
      readonly locale?: unknown;
      /** texts by their English ones: `language/l10n` */
      readonly translation?: unknown;
      readonly commandLinks?: unknown;
    };
    this.#commandLinks = commandLinks === true;
    useTranslation(readTranslation(translation));
    this.#locale = typeof locale === 'string' && locale !== '' ? locale : undefined;
    super.initialize(params);
  }

  override initialized(params: ConfigurationInitializedParams): Promise<void> {
    this.#fetch = params.fetchConfiguration;
    return super.initialized(params);
  }

  /** Some editors send the settings, others only say that there are new ones. */
  override updateConfiguration(change: Parameters<DefaultConfigurationProvider['updateConfiguration']>[0]): void {
    const sent: unknown = change.settings;
    if (typeof sent === 'object' && sent !== null && section in sent) super.updateConfiguration(change);
    else if (this.workspaceConfig) {
      this.#fetch?.([{ section }]).then(
        (values: unknown[]) => this.updateSectionConfiguration(section, values[0]),
        (error: unknown) => console.error('The settings could not be asked for:', error),
      );
    }
  }

  protected override toSectionName(): string {
    return section;
  }

  protected override updateSectionConfiguration(name: string, values: unknown): void {
    super.updateSectionConfiguration(name, values);
    if (name !== section) return;
    const next = readSettings(values);
    if (JSON.stringify(next) === JSON.stringify(this.#current)) return;
    this.#current = next;
    for (const listener of this.#listeners) listener(next);
  }
}

/** Reads what an editor sent; `values` is whatever stands in a settings file. */
export function readSettings(values: unknown): Settings {
  const read = (typeof values === 'object' && values !== null ? values : {}) as Readonly<Record<string, unknown>>;
  const named = typeof read.severities === 'object' && read.severities !== null ? Object.entries(read.severities) : [];
  return {
    severities: Object.fromEntries(named.filter(([, severity]) => severities.includes(severity))),
    units: units.find((system) => system === read.units) ?? defaultSettings.units,
    hints: readHints(read.hints),
    lens: typeof read.lens === 'boolean' ? read.lens : defaultSettings.lens,
  };
}

function readHints(values: unknown): HintChoice {
  const read = (typeof values === 'object' && values !== null ? values : {}) as Readonly<Record<string, unknown>>;
  const chosen = hintKinds.map((kind) => [
    kind,
    typeof read[kind] === 'boolean' ? read[kind] : defaultSettings.hints[kind],
  ]);
  return Object.fromEntries(chosen) as HintChoice;
}
