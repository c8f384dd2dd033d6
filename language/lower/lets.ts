import type { AstNode } from 'langium';
import { text } from '../../calc/figure/figure.ts';
import { type Amount, UNKNOWN, type Unknown } from '../../calc/model/index.ts';
import { add, divide, isMismatch, multiply, type Quantity, subtract } from '../../calc/quantity/index.ts';
import type { Expression, Let } from '../grammar/generated/ast.ts';
import { readQuantity } from './amounts.ts';
import type { Lowering } from './lowering.ts';
import { nodeSpan, propertySpan } from './places.ts';

type Value = Quantity | Unknown | undefined;

/** The `let`s of a recipe: in any order, with dimensions; a cycle is a problem and has no value. */
export class Lets {
  private readonly low: Lowering;
  private readonly lines = new Map<string, Let>();
  private readonly values = new Map<string, Value>();

  constructor(low: Lowering, lines: readonly Let[]) {
    this.low = low;
    // a later line of the same name (of a size) replaces the earlier one
    for (const line of lines) if (line.name !== undefined) this.lines.set(line.name, line);
  }

  has(name: string): boolean {
    return this.lines.has(name);
  }

  names(): readonly string[] {
    return [...this.lines.keys()];
  }

  valueOf(name: string): Value {
    if (!this.values.has(name)) this.settle(name);
    return this.values.get(name);
  }

  all(): Record<string, Amount | Unknown> {
    const values: Record<string, Amount | Unknown> = {};
    for (const name of this.lines.keys()) {
      const value = this.valueOf(name);
      if (value !== undefined) values[name] = value;
    }
    return values;
  }

  /** Settles what `name` needs first, without recursion: a chain of ten thousand lines is no deeper than one. */
  private settle(name: string): void {
    const waiting: string[] = [name];
    const open = new Set<string>();
    while (waiting.length > 0) {
      const current = waiting[waiting.length - 1] as string;
      if (this.values.has(current)) {
        waiting.pop();
        continue;
      }
      const line = this.lines.get(current);
      const needs = [...new Set(line?.value === undefined ? [] : lettersIn(line.value))].filter(
        (n) => this.lines.has(n) && !this.values.has(n),
      );
      if (needs.length === 0 || open.has(current)) {
        const cycle = needs.length > 0;
        if (cycle && line !== undefined) this.reportCycle(current, needs, line);
        this.values.set(current, cycle || line?.value === undefined ? undefined : evaluate(this.low, line.value, this));
        open.delete(current);
        waiting.pop();
        continue;
      }
      open.add(current);
      const inCycle = needs.filter((n) => open.has(n));
      if (inCycle.length > 0) continue;
      waiting.push(...needs);
    }
  }

  private reportCycle(name: string, needs: readonly string[], line: Let): void {
    const others = needs.filter((n) => n !== name);
    const message =
      others.length === 0
        ? text('`{name}` is worked out from itself', { name })
        : text('`{name}` is worked out from `{other}`, and that from `{name}` again', {
            name,
            other: others[0] as string,
          });
    this.low.problem('name/cyclic', propertySpan(line, 'value') ?? line, message);
  }
}

/** Names of `let`s in an expression. */
function lettersIn(expression: Expression): string[] {
  const names: string[] = [];
  const todo: (Expression | undefined)[] = [expression];
  while (todo.length > 0) {
    const node = todo.pop();
    if (node === undefined) continue;
    if (node.$type === 'Operation') todo.push(node.left, node.right);
    else if (node.$type === 'Group') todo.push(node.inner);
    else if (node.$type === 'LetReference') names.push(node.target.$refText);
  }
  return names;
}

/** Value of an expression; undefined after a problem. `?` makes the whole unknown. */
export function evaluate(low: Lowering, expression: Expression | undefined, lets: Lets | undefined = low.lets): Value {
  if (expression === undefined) return undefined;
  if (expression.$type === 'Literal') return readQuantity(low, expression.quantity, nodeSpan(expression));
  if (expression.$type === 'Group') return evaluate(low, expression.inner, lets);
  if (expression.$type === 'LetReference') return letValue(low, expression.target.$refText, expression, lets);
  // a long sum leans to the left: walk down its spine instead of calling deeper
  const spine = [];
  let node: Expression = expression;
  while (node.$type === 'Operation') {
    spine.push(node);
    node = node.left;
    if (node === undefined) return undefined;
  }
  let value = evaluate(low, node, lets);
  for (const operation of spine.reverse()) {
    const right = evaluate(low, operation.right, lets);
    if (value === undefined || right === undefined) return undefined;
    if (value === UNKNOWN || right === UNKNOWN) {
      value = UNKNOWN;
      continue;
    }
    const reckon = { '+': add, '-': subtract, '*': multiply, '/': divide }[operation.operator];
    const result = reckon(value, right);
    if (isMismatch(result)) {
      low.problem(
        result.because === 'not-finite' || result.because === 'division-by-zero'
          ? 'unit/suspicious'
          : 'unit/wrong-dimension',
        operation,
        result.message,
      );
      return undefined;
    }
    value = result;
  }
  return value;
}

function letValue(low: Lowering, name: string, where: AstNode, lets: Lets | undefined): Value {
  if (lets?.has(name) === true) return lets.valueOf(name);
  const known = lets?.names() ?? [];
  low.problem(
    'name/unknown',
    where,
    known.length === 0
      ? text('there is no `let {name} = ...` in this recipe', { name })
      : text('there is no `let {name}`; this recipe has {known}', { name, known: known.slice(0, 6).join(', ') }),
  );
  return undefined;
}
