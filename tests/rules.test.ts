import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { type AnalysisServices, analysisModule } from '../language/analysis/module.ts';
import type { Fix } from '../language/lower/index.ts';
import type { Finding } from '../language/rules/finding.ts';
import { rules } from '../language/rules/generated/rules.ts';
import type { Rule } from '../language/rules/rule.ts';
import { sayText } from '../language/view/text.ts';
import { openBook } from './harness/book.ts';
import { chapters, type Fragment, type Mark, readPage, writeFragment } from './harness/rule-page.ts';
import { placeFragment } from './harness/standard-book.ts';

/*
 * Each rule's page is its test: the findings that the page marks, exactly those and no other; at least one fragment that
 * fires and one that is silent; and the first fix of the first finding leads to the text that the page shows as mended,
 * where the finding is gone and nothing new has come. `UPDATE=1` writes the marks anew; read the diff.
 */
const folder = path.join(import.meta.dirname, '../language/rules');
const update = process.env.UPDATE === '1';
const pageFiles = readdirSync(folder, { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.md'))
  .sort();

async function findingsIn(
  code: string,
): Promise<{ marks: Mark[]; findings: Finding[]; text: string; from: number; outside: string[] }> {
  const placed = placeFragment(code);
  const book = await openBook(placed.files, { modules: [analysisModule as never] });
  const { analysis } = book.services as typeof book.services & AnalysisServices;
  const document = book.document(placed.file);
  const source = document.textDocument;
  const length = code.split('\n').length;
  const inside: { mark: Mark; finding: Finding }[] = [];
  const outside: string[] = [];
  for (const file of Object.keys(placed.files).filter((name) => name.endsWith('.layup'))) {
    for (const finding of await analysis.findings(book.document(file))) {
      if (finding.accepted !== undefined) continue;
      const start = source.positionAt(finding.span.offset);
      const end = source.positionAt(finding.span.end);
      const line = start.line - placed.line;
      const message = sayText(finding.message);
      if (file !== placed.file || line < 0 || line >= length) {
        outside.push(`${file}:${start.line + 1} ${finding.rule}: ${message}`);
        continue;
      }
      const lineEnd = (code.split('\n')[line] ?? '').length;
      const to =
        end.line === start.line ? Math.max(end.character, start.character + 1) : Math.max(lineEnd, start.character + 1);
      inside.push({ mark: { line, from: start.character, to, rule: finding.rule, message }, finding });
    }
  }
  const from = source.offsetAt({ line: placed.line, character: 0 });
  book.dispose();
  inside.sort(
    (a, b) => a.mark.line - b.mark.line || a.mark.from - b.mark.from || a.mark.rule.localeCompare(b.mark.rule),
  );
  return {
    marks: inside.map((each) => each.mark),
    findings: inside.map((each) => each.finding),
    text: source.getText(),
    from,
    outside,
  };
}

/** A mark cannot begin left of the third column, where the comment sign ends. */
const shown = (mark: Mark): string => {
  const from = Math.max(mark.from, 2);
  return `${mark.line + 1}:${from}-${Math.max(mark.to, from + 1)} ${mark.rule}: ${mark.message}`;
};

function mend(text: string, fix: Fix | undefined, from: number, code: string): string {
  const edits = [...(fix?.edits ?? [])].sort((a, b) => b.offset - a.offset || b.end - a.end);
  const tail = text.length - (from + code.length);
  const whole = edits.reduce((all, edit) => all.slice(0, edit.offset) + edit.text + all.slice(edit.end), text);
  return whole.slice(from, whole.length - tail);
}

/** Each fix of each finding of the rule, one by one: the finding goes, nothing new comes. */
async function applyEveryFix(
  name: string,
  { code, line }: Fragment,
  found: Awaited<ReturnType<typeof findingsIn>>,
): Promise<void> {
  const said = (mark: Mark): string => `${mark.rule} ${mark.message}`;
  const before = new Set(found.marks.map(said));
  const own = (marks: readonly Mark[]): number => marks.filter((mark) => mark.rule === name).length;
  for (const finding of found.findings) {
    // which unit was meant is a choice: the likeliest stands first, another may be wrong here
    const fixes = name.startsWith('unit/') ? finding.fixes.slice(0, 1) : finding.fixes;
    for (const fix of finding.rule === name ? fixes : []) {
      const what = `fix "${sayText(fix.title)}" in the fragment of line ${line}`;
      const after = await findingsIn(mend(found.text, fix, found.from, code));
      expect(after.outside, what).toEqual([]);
      expect(
        after.marks.map(said).filter((each) => !before.has(each)),
        `${what}: nothing new comes`,
      ).toEqual([]);
      expect(own(after.marks), `${what}: the finding goes`).toBeLessThan(own(found.marks));
    }
  }
}

async function checkFragment(name: string, fragment: Fragment): Promise<{ code: string; mended?: string }> {
  const found = await findingsIn(fragment.code);
  expect(found.outside, `findings outside of the fragment of line ${fragment.line}`).toEqual([]);
  if (!update) expect(found.marks.map(shown), `fragment of line ${fragment.line}`).toEqual(fragment.marks.map(shown));
  let mended: string | undefined;
  if (fragment.mended !== undefined) {
    const finding = found.findings[0];
    expect(finding?.rule, `the first finding of line ${fragment.line} is to be mended`).toBe(name);
    expect(finding?.fixes.length, `a fix for line ${fragment.line}`).toBeGreaterThan(0);
    mended = mend(found.text, finding?.fixes[0], found.from, fragment.code);
    if (!update) expect(mended).toBe(fragment.mended);
  }
  if (!update) await applyEveryFix(name, fragment, found);
  return { code: writeFragment(fragment.code, found.marks), ...(mended === undefined ? {} : { mended }) };
}

function rewritten(text: string, fragments: readonly { code: string; mended?: string }[]): string {
  let index = -1;
  return text.replace(/^```layup( mended)?\n[\s\S]*?\n```$/gm, (_whole, isMended: string | undefined) => {
    if (isMended === undefined) index++;
    const fragment = fragments[index];
    return `\`\`\`layup${isMended ?? ''}\n${isMended === undefined ? fragment?.code : fragment?.mended}\n\`\`\``;
  });
}

describe('every rule has its page, and every page its rule', () => {
  it('by name', () => {
    expect(pageFiles.map((file) => file.replace(/\.md$/, '').replaceAll('\\', '/'))).toEqual(
      (rules as readonly Rule[]).map((rule) => rule.name).sort(),
    );
  });
});

describe('what the pages show', () => {
  for (const file of pageFiles) {
    const name = file.replace(/\.md$/, '').replaceAll('\\', '/');
    it(name, async () => {
      const page = readPage(path.join(folder, file));
      expect(page.title, 'the page begins with the name of its rule').toContain(name);
      let at = 0;
      for (const chapter of chapters) {
        const found = page.text.indexOf(`\n## ${chapter}\n`, at);
        expect(found, `chapter "${chapter}"`).toBeGreaterThan(0);
        at = found;
      }
      expect(
        page.fragments.some((fragment) => update || fragment.marks.some((mark) => mark.rule === name)),
        'a fragment that fires',
      ).toBe(true);
      expect(
        page.fragments.some((fragment) => fragment.marks.length === 0),
        'a fragment that is silent',
      ).toBe(true);
      const results = [];
      for (const fragment of page.fragments) results.push(await checkFragment(name, fragment));
      const fresh = rewritten(page.text, results);
      if (update && fresh !== readFileSync(path.join(folder, file), 'utf8'))
        writeFileSync(path.join(folder, file), fresh);
      // a page with many fixes opens a book for each of them
    }, 60_000);
  }
});
