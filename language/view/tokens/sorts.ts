import * as ast from '../../grammar/generated/ast.ts';

/** Names of the standard token types of the Language Server Protocol, so that every theme has colours for them. */
export const HIGHLIGHTS = [
  'keyword',
  'function',
  'property',
  'class',
  'struct',
  'variable',
  'parameter',
  'event',
  'enumMember',
  'number',
] as const;
export type HighlightType = (typeof HIGHLIGHTS)[number];

export const MODIFIERS = ['declaration', 'defaultLibrary'] as const;
export type HighlightModifier = (typeof MODIFIERS)[number];

/** What a name stands for, by the kind of node that it names. */
export const named: Readonly<Record<string, HighlightType>> = {
  [ast.Material.$type]: 'class',
  [ast.Tool.$type]: 'class',
  [ast.Recipe.$type]: 'struct',
  [ast.CoatLayer.$type]: 'variable',
  [ast.ClothLayer.$type]: 'variable',
  [ast.CoreLayer.$type]: 'variable',
  [ast.Zone.$type]: 'variable',
  [ast.Port.$type]: 'variable',
  [ast.Let.$type]: 'parameter',
  [ast.Load.$type]: 'event',
  [ast.Size.$type]: 'enumMember',
};

/** What is referred to in each place, for as long as nothing has that name. */
export const references: Readonly<Record<string, HighlightType>> = {
  'Material.base': 'class',
  'MaterialFact.material': 'class',
  'Tool.base': 'class',
  'Recipe.base': 'struct',
  'Stack.tool': 'class',
  'Stack.caul': 'class',
  'CoatLayer.material': 'class',
  'ClothLayer.material': 'class',
  'ClothLayer.resin': 'class',
  'CoreLayer.material': 'class',
  'Mirror.about': 'variable',
  'WrapClause.target': 'variable',
  'GrooveClause.strip': 'variable',
  'OverClause.zone': 'variable',
  'Process.base': 'struct',
  'Process.resin': 'class',
  'Port.material': 'class',
  'Lay.first': 'variable',
  'Lay.last': 'variable',
  'Lay.resin': 'class',
  'Test.load': 'event',
  'Test.layer': 'variable',
  'Change.line': 'variable',
  'Without.line': 'variable',
  'BuildRecord.recipe': 'struct',
  'BuildRecord.size': 'enumMember',
  'Lot.material': 'class',
  'LetReference.target': 'parameter',
  'Coordinate.end': 'variable',
};

/** Words of a line that say what it is: `ply`, `process`, `expect`. */
export const heads: ReadonlySet<string> = new Set([
  'Shop',
  'Material',
  'Tool',
  'Recipe',
  'BuildRecord',
  'Version',
  'Let',
  'PartBlock',
  'Stack',
  'CoatLayer',
  'ClothLayer',
  'CoreLayer',
  'Repeat',
  'Mirror',
  'Process',
  'Load',
  'Expect',
  'Size',
  'Change',
  'Without',
]);

/** Words of the line that tell a fact. */
export const facts: ReadonlySet<string> = new Set(['Fact.key', 'MaterialFact.key', 'Test.what']);
export const factHeads: ReadonlySet<string> = new Set(['OutlineLine', 'CutoutLine', 'Zone', 'Lot']);
/** Words of the line that say what is done. */
export const verbs: ReadonlySet<string> = new Set(['Step.verb', 'Lay.verb', 'Check.verb', 'Port.verb']);
