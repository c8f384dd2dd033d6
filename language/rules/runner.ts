import { isOperationCancelled } from 'langium';
import { type Text, text } from '../../calc/figure/figure.ts';
import { type Bench, benchOf } from '../../calc/figure/index.ts';
import type { Book, Recipe } from '../../calc/model/index.ts';
import { type AcceptLine, type EntryModel, type Lowered, type Span, spanOf } from '../lower/index.ts';
import { Editing, withoutClause } from './editing.ts';
import type { Finding, Report } from './finding.ts';
import type { Names } from './names.ts';
import type { Context, RecipeContext, Rule, Severity } from './rule.ts';

/** Severities of a workspace: `off` leaves a rule out. */
export type Severities = Readonly<Record<string, Severity | 'off'>>;

export interface Checked {
  readonly lowered: Lowered;
  readonly text: string;
  readonly first: Lowered | undefined;
}

/** What rules may ask. */
interface Asked {
  readonly book: Book;
  readonly names: Names;
  readonly benchOf: (recipe: Recipe) => Bench;
}

const kinds: readonly EntryModel['kind'][] = ['recipe', 'material', 'tool', 'shop', 'record', 'nothing'];

/** The rules, by what they are about, and the two that the runner itself reports. */
export class Runner {
  private readonly byName: ReadonlyMap<string, Rule>;
  private readonly byKind: ReadonlyMap<EntryModel['kind'], readonly Rule[]>;

  constructor(rules: readonly Rule[]) {
    // most rules are about recipes: an entry of another kind goes through the few of its own
    this.byKind = new Map(kinds.map((kind) => [kind, rules.filter(({ on }) => on === kind || on === 'entry')]));
    this.byName = new Map(rules.map((rule) => [rule.name, rule]));
  }

  rule(name: string): Rule | undefined {
    return this.byName.get(name);
  }

  get names(): readonly string[] {
    return [...this.byName.keys()];
  }

  /**
   * All findings of one entry, those that its lines accept marked so; a rule that throws is one finding and stops no other.
   * `figuresOf`: the bench of a recipe, where somebody notes which ones are asked.
   */
  findings(
    checked: Checked,
    book: Book,
    names: Names,
    severities: Severities = {},
    figuresOf: (recipe: Recipe) => Bench = (recipe) => benchOf(recipe, book),
  ): Finding[] {
    const { lowered } = checked;
    const found: Finding[] = lowered.problems.map((problem) => ({
      rule: problem.rule,
      severity: this.severity(problem.rule),
      message: problem.message,
      span: problem.span,
      related: problem.related ?? [],
      fixes: problem.fixes ?? [],
    }));
    const told = new Set<string>();
    const contexts = contextsOf(checked, { book, names, benchOf: figuresOf }, (rule, report, recipe) => {
      // a size repeats what the recipe itself was told; only what is new there is said
      const key = `${rule.name} ${report.at}`;
      if (recipe?.size !== undefined && told.has(key)) return;
      told.add(key);
      found.push(placed(rule, report, lowered, recipe));
    });
    const isSet = Object.keys(severities).length > 0;
    for (const rule of this.byKind.get(lowered.model.kind) ?? []) {
      if (isSet && severities[rule.name] === 'off' && rule.always !== true) continue;
      this.run(rule, contexts);
    }
    const weighed = isSet ? this.weighed(found, severities) : found;
    return withAccepted(weighed, checked, (rule) => this.byName.get(rule), this.severity('line/accept-needless'));
  }

  /** Findings by the severities of the workspace; what may hurt somebody keeps its own. */
  private weighed(found: readonly Finding[], severities: Severities): Finding[] {
    return found.flatMap((finding) => {
      const wanted = this.byName.get(finding.rule)?.always === true ? undefined : severities[finding.rule];
      if (wanted === 'off') return [];
      return [wanted === undefined ? finding : { ...finding, severity: wanted }];
    });
  }

  private severity(rule: string): Severity {
    return this.byName.get(rule)?.severity ?? 'error';
  }

  private run(rule: Rule, contexts: Contexts): void {
    const { entry, model } = contexts;
    contexts.running = rule;
    try {
      // most are about recipes
      if (rule.on === 'recipe') for (const recipe of contexts.recipes) rule.check(recipe);
      else if (rule.on === 'entry') rule.check(entry);
      else if (rule.on === 'material' && model.kind === 'material') rule.check({ ...entry, material: model.material });
      else if (rule.on === 'tool' && model.kind === 'tool') rule.check({ ...entry, tool: model.tool });
      else if (rule.on === 'shop' && model.kind === 'shop') rule.check({ ...entry, shop: model.shop });
      else if (rule.on === 'record' && model.kind === 'record') {
        const { record } = model;
        rule.check({
          ...entry,
          record,
          recipe: record.recipe === undefined ? undefined : entry.book.recipe(record.recipe, record.size),
        });
      }
    } catch (error) {
      if (isOperationCancelled(error)) throw error;
      entry.report({
        at: '',
        message: text('the rule {rule} broke down here and said nothing: please report it ({error})', {
          rule: rule.name,
          error: String(error),
        }),
      });
    }
  }
}

/** What all rules of one entry are given; made once, since there are many rules. */
interface Contexts {
  readonly entry: Context;
  readonly recipes: readonly RecipeContext[];
  readonly model: EntryModel;
  /** the rule that reports now */
  running: Rule | undefined;
}

function contextsOf(
  { lowered, text: source, first }: Checked,
  asked: Asked,
  report: (rule: Rule, report: Report, recipe?: Recipe) => void,
): Contexts {
  const { model } = lowered;
  const reported = (found: Report, recipe?: Recipe): void => {
    if (contexts.running !== undefined) report(contexts.running, found, recipe);
  };
  const contexts: { -readonly [K in keyof Contexts]: Contexts[K] } = {
    entry: {
      ...asked,
      lowered,
      first,
      edit: new Editing(source, lowered.places),
      report: (finding) => reported(finding),
    },
    recipes: [],
    model,
    running: undefined,
  };
  if (model.kind === 'recipe') {
    contexts.recipes = model.recipes.map((recipe) => {
      const bench = asked.benchOf(recipe);
      return {
        ...contexts.entry,
        recipe,
        bench,
        ask: bench.ask.bind(bench),
        report: (finding) => reported(finding, recipe),
      };
    });
  }
  return contexts;
}

function placed(rule: Rule, report: Report, lowered: Lowered, recipe: Recipe | undefined): Finding {
  const span = spanOf(lowered.places, report.at) ?? { offset: 0, end: 0 };
  const message: Text =
    recipe?.size === undefined
      ? report.message
      : {
          template: 'in size {in_size}: {message}',
          figures: { ...report.message.figures, in_size: recipe.size, message: report.message },
        };
  return {
    rule: rule.name,
    severity: report.severity ?? rule.severity,
    message,
    span,
    related: report.related ?? [],
    fixes: (report.fixes ?? []).filter((fix) => fix !== undefined),
  };
}

/** Applies `accept`: by rule and by line. One that silences nothing is information of its own. */
function withAccepted(
  found: readonly Finding[],
  { lowered, text: source }: Checked,
  ruleOf: (name: string) => Rule | undefined,
  severity: Severity,
): Finding[] {
  if (lowered.accepts.length === 0) return [...found];
  const used = new Set<AcceptLine>();
  const out = found.map((finding) => {
    const accept = lowered.accepts.find((line) => line.rule === finding.rule && covers(line, finding.span, lowered));
    if (accept === undefined) return finding;
    used.add(accept);
    return ruleOf(finding.rule)?.always === true ? finding : { ...finding, accepted: accept.reason };
  });
  // Where a line cannot be read, a rule may be silent for want of it.
  const whole = lowered.problems.length === 0;
  for (const accept of whole ? lowered.accepts : []) {
    if (used.has(accept)) continue;
    out.push({
      rule: 'line/accept-needless',
      severity,
      message:
        ruleOf(accept.rule) === undefined
          ? text('no rule is called {rule}', { rule: accept.rule })
          : text('nothing here to accept: {rule} finds no fault with this line', { rule: accept.rule }),
      span: accept.span,
      related: [],
      fixes: [withoutClause('Take it away', accept.span, source)],
    });
  }
  return out;
}

/** A line covers what is reported inside of it; the head of a block covers its head alone. */
function covers(accept: AcceptLine, span: Span, lowered: Lowered): boolean {
  const line = lowered.places.get(accept.line);
  return line !== undefined && span.offset >= line.offset && span.end <= Math.max(line.end, accept.span.end);
}
