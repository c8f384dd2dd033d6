import { SymbolKind } from 'vscode-languageserver-protocol';
import type { SymbolSort } from '../view/symbols.ts';

/** The picture that an editor shows beside each sort of line. */
export const symbolKinds: Readonly<Record<SymbolSort, SymbolKind>> = {
  shop: SymbolKind.Namespace,
  material: SymbolKind.Class,
  tool: SymbolKind.Object,
  recipe: SymbolKind.Package,
  record: SymbolKind.Event,
  part: SymbolKind.Struct,
  outline: SymbolKind.Field,
  zone: SymbolKind.Field,
  stack: SymbolKind.Array,
  layer: SymbolKind.Variable,
  group: SymbolKind.Array,
  process: SymbolKind.Method,
  step: SymbolKind.Function,
  port: SymbolKind.Property,
  load: SymbolKind.Constant,
  expect: SymbolKind.Boolean,
  size: SymbolKind.EnumMember,
  let: SymbolKind.Constant,
};
