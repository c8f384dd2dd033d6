import { inject, type Module } from 'langium';
import {
  createDefaultModule,
  createDefaultSharedModule,
  type DefaultSharedModuleContext,
  type LangiumServices,
  type LangiumSharedServices,
  type PartialLangiumServices,
} from 'langium/lsp';
import { LayupGeneratedModule, LayupGeneratedSharedModule } from '../grammar/generated/module.ts';
import { grammarModule } from '../grammar/module.ts';
import type { LayupUpdateHandler } from '../lsp/update-handler.ts';
import type { BookBuilder } from './builder.ts';
import type { Drawings } from './drawings.ts';
import type { Findings } from './findings-port.ts';
import type { BookIndex } from './index-manager.ts';
import { bookModule, sharedModule } from './module.ts';
import type { BookNames } from './names.ts';
import type { SettingsProvider } from './settings.ts';
import type { StockLibrary } from './stock.ts';

export interface LayupSharedServices extends LangiumSharedServices {
  readonly lsp: LangiumSharedServices['lsp'] & { readonly DocumentUpdateHandler: LayupUpdateHandler };
  readonly workspace: LangiumSharedServices['workspace'] & {
    readonly IndexManager: BookIndex;
    readonly DocumentBuilder: BookBuilder;
    readonly Drawings: Drawings;
    readonly ConfigurationProvider: SettingsProvider;
  };
}

/** What the book adds to the services of Langium. */
export interface BookServices {
  readonly names: BookNames;
  readonly stock: StockLibrary;
  readonly settings: SettingsProvider;
  readonly findings: Findings;
}

export interface LayupServices extends LangiumServices, BookServices {
  readonly shared: LayupSharedServices;
}

export type PartialLayupServices = PartialLangiumServices & Partial<BookServices>;

/** A module that knows the services of the notation, and adds `More` to them. */
export type MoreServices<More = unknown> = Module<LayupServices & More, PartialLayupServices & Partial<More>>;

/**
 * The services of the notation. `more` adds to them or takes their place: findings, and what the editor is shown.
 */
export function createLayupServices<More = unknown>(
  context: DefaultSharedModuleContext,
  ...more: readonly MoreServices<More>[]
): { readonly shared: LayupSharedServices; readonly layup: LayupServices & More } {
  const shared = inject(createDefaultSharedModule(context), LayupGeneratedSharedModule, sharedModule);
  const own = inject(
    createDefaultModule({ shared }),
    LayupGeneratedModule,
    grammarModule,
    bookModule,
    ...(more as [MoreServices<More>?]),
  );
  const layup = own as LayupServices & More;
  shared.ServiceRegistry.register(layup);
  // The library listens to updates of the book, so it must be there before the first.
  void layup.stock;
  return { shared: shared as LayupSharedServices, layup };
}
