import { type AstNode, AstUtils } from 'langium';

/** Kinds of tree nodes that are a line of their own, or the head of a block. */
const statementTypes = new Set([
  'Version',
  'Shop',
  'Material',
  'Tool',
  'Recipe',
  'BuildRecord',
  'Fact',
  'MaterialFact',
  'Note',
  'Let',
  'PartBlock',
  'OutlineLine',
  'CutoutLine',
  'Zone',
  'Stack',
  'CoatLayer',
  'ClothLayer',
  'CoreLayer',
  'Repeat',
  'Mirror',
  'Process',
  'Port',
  'Lay',
  'Check',
  'Step',
  'Load',
  'Expect',
  'Size',
  'Change',
  'Without',
  'Lot',
  'Unknown',
  'Junk',
  'Loose',
]);

export interface Statement {
  readonly line: number;
  readonly type: string;
  readonly text: string;
}

/** The statements of a tree by the line they begin on (from 0); a block counts with its head. */
export function statementsOf(root: AstNode): Statement[] {
  const found: Statement[] = [];
  for (const node of AstUtils.streamAst(root)) {
    const cst = node.$cstNode;
    if (cst === undefined || !statementTypes.has(node.$type)) continue;
    const head = cst.text.split(/[{\r\n]/)[0]?.trim() ?? '';
    found.push({ line: cst.range.start.line, type: node.$type, text: head });
  }
  return found;
}

/** Statements on other lines that are gone or became something else. */
export function damage(
  before: readonly Statement[],
  after: readonly Statement[],
  line: number,
): { lost: Statement[]; retyped: Statement[] } {
  const now = new Map<number, Statement[]>();
  for (const statement of after) now.set(statement.line, [...(now.get(statement.line) ?? []), statement]);
  const lost: Statement[] = [];
  const retyped: Statement[] = [];
  for (const statement of before) {
    if (statement.line === line) continue;
    const there = now.get(statement.line) ?? [];
    if (there.some((s) => s.type === statement.type && s.text === statement.text)) continue;
    (there.some((s) => s.text === statement.text) ? retyped : lost).push(statement);
  }
  return { lost, retyped };
}
