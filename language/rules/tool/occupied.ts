import { text } from '../../../calc/figure/figure.ts';
import type { BuildRecord } from '../../../calc/model/index.ts';
import { factValue } from '../kit/layers.ts';
import { leastOnTheTool } from '../kit/on-the-tool.ts';
import { planOf, readingsOf } from '../kit/record-plan.ts';
import { aboutTime } from '../kit/shown.ts';
import { rule } from '../rule.ts';

const DAY = 86400;

export const toolOccupied = rule({
  name: 'tool/occupied',
  severity: 'warning',
  title: 'more parts on a tool at once than there are tools',
  on: 'record',
  check(context) {
    const { record, book, recipe } = context;
    const plan = planOf(context);
    const tool = recipe?.stack?.tool;
    if (plan === undefined || tool === undefined || record.date === undefined || !byPlan(record, plan.recipe.revision))
      return;
    const entry = book.tool(tool);
    if (entry === undefined) return;
    const count = factValue(entry.count) ?? 1;
    const all = book.recordsOnTool(tool);
    const own = Math.max(
      all.findIndex((each) => each.entry === record.entry),
      0,
    );
    if (own < count) return;
    // parts of this recipe that were begun before
    const earlier: BuildRecord[] = [];
    for (const other of all.slice(0, own)) {
      if (other.recipe !== record.recipe || other.size !== record.size || other.date === undefined) continue;
      if (byPlan(other, plan.recipe.revision)) earlier.push(other);
    }
    if (earlier.length < count) return;
    // those that cannot have left the tool, however early they were begun
    const stays = leastOnTheTool(plan);
    if (stays === undefined) return;
    const still = earlier.filter((other) => stays > (days(other.date, record.date) + 1) * DAY);
    if (still.length < count) return;
    const shown = { tool, count, stays: aboutTime(stays), others: still.length };
    context.report({
      at: '',
      message:
        count === 1
          ? text(
              '{tool} is taken: by its plan a part stays on it for {stays}, and there is one; is the day right?',
              shown,
            )
          : text(
              '{tool} is taken: by its plan a part stays on it for {stays}, there are {count}, and {others} parts are on them; is the day right?',
              shown,
            ),
      related: [
        ...still.map((other) => ({
          at: { entry: other.entry, path: '' },
          message: text('begun on {date}, still on the tool', { date: other.date ?? '' }),
        })),
        ...(entry.count === undefined ? [] : [{ at: entry.count.at, message: text('{count} of {tool}', shown) }]),
      ],
    });
  },
});

/** A record of another revision, or one that says what was done otherwise, stayed as long as nobody knows. */
const byPlan = (record: BuildRecord, revision: number | undefined): boolean =>
  record.revision === revision && readingsOf(record, 'differs').length === 0;

const days = (from: string | undefined, to: string | undefined): number =>
  Math.round((Date.parse(to ?? '') - Date.parse(from ?? '')) / (DAY * 1000));
