import {
  createLangiumParser,
  type LangiumCoreServices,
  type LangiumParser,
  type Module,
  type PartialLangiumCoreServices,
} from 'langium';
import { LayupLexer } from './lexer.ts';
import { keepErrorsOnTheirLine } from './recovery.ts';
import { SoftWordTokenBuilder } from './token-builder.ts';
import { LayupValueConverter } from './values.ts';

/** The parser services of the notation. */
export const grammarModule: Module<LangiumCoreServices, PartialLangiumCoreServices> = {
  parser: {
    TokenBuilder: () => new SoftWordTokenBuilder(),
    Lexer: (services) => new LayupLexer(services),
    ValueConverter: () => new LayupValueConverter(),
    LangiumParser: (services): LangiumParser => {
      const parser = createLangiumParser(services);
      keepErrorsOnTheirLine(parser);
      return parser;
    },
    ParserConfig: () => ({ recoveryEnabled: true }),
  },
};
