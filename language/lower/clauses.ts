import type { Clause } from '../grammar/generated/ast.ts';

/** The words that a clause begins with, by which `change` replaces it: `wrap`, `darts`, `note`, `rectangle`, `to` ... */
export function clauseWord(clause: Clause): string {
  switch (clause.$type) {
    case 'WrapClause':
      return 'wrap';
    case 'GrooveClause':
      return 'groove';
    case 'OverClause':
      return 'over';
    case 'NoteClause':
      return 'note';
    case 'AcceptClause':
      return 'accept';
    case 'SourceClause':
      return 'source';
    case 'ShapeClause':
      return 'shape';
    case 'Phrase':
      return clause.word;
    case 'PartClause':
      return clause.parts[0]?.prep ?? '';
    case 'AmountClause':
      return 'amount';
    default:
      return '';
  }
}

/** A changed line keeps its other clauses; those that begin with the words given are replaced, in their place. */
export function withChanges(clauses: readonly Clause[], changes: readonly Clause[]): readonly Clause[] {
  if (changes.length === 0) return clauses;
  const replaced = new Set(changes.map(clauseWord));
  const extents = new Set(['net', 'wrap', 'over', 'shape']);
  const newExtent = changes.some((c) => extents.has(clauseWord(c)));
  return [
    ...clauses.filter((c) => !replaced.has(clauseWord(c)) && !(newExtent && extents.has(clauseWord(c)))),
    ...changes,
  ];
}
