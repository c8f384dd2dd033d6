import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type AnalysisServices, analysisModule } from '../../language/analysis/module.ts';
import type { Finding } from '../../language/rules/finding.ts';
import { sayText } from '../../language/view/text.ts';
import { openBook, type TestBook } from '../harness/book.ts';

const root = path.join(import.meta.dirname, '../..');
const sample = path.join(root, 'extension/sample');
const recipes = path.join(root, 'tests/recipes');

const layupFiles = (folder: string): Record<string, string> =>
  Object.fromEntries(
    readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((file) => file.endsWith('.layup'))
      .map((file) => [file.replaceAll('\\', '/'), readFileSync(path.join(folder, file), 'utf8')]),
  );

async function opened(
  files: Readonly<Record<string, string>>,
): Promise<{ book: TestBook; findingsIn(file: string): Promise<{ line: number; finding: Finding }[]> }> {
  const book = await openBook(files, { modules: [analysisModule as never] });
  const { analysis } = book.services as typeof book.services & AnalysisServices;
  return {
    book,
    async findingsIn(file) {
      const document = book.document(file);
      const findings = await analysis.findings(document);
      return findings.map((finding) => ({
        line: document.textDocument.positionAt(finding.span.offset).line + 1,
        finding,
      }));
    },
  };
}

describe('the first try', () => {
  const expected = JSON.parse(readFileSync(path.join(import.meta.dirname, 'first-try.expected.json'), 'utf8')) as {
    rule: string;
    line: number;
  }[];
  let told: { rule: string; line: number }[];
  beforeAll(async () => {
    const { book, findingsIn } = await opened(layupFiles(sample));
    told = (await findingsIn('first_try.layup')).map(({ line, finding }) => ({ rule: finding.rule, line }));
    book.dispose();
  });

  it('holds each mistake that was put into it, and no other', () => {
    const sorted = (list: typeof told) => list.map(({ rule, line }) => `${line} ${rule}`).sort();
    expect(sorted(told)).toEqual(sorted(expected));
  });

  it('tells none of them twice', () => {
    const keys = told.map(({ rule, line }) => `${line} ${rule}`);
    expect(keys.filter((key, i) => keys.indexOf(key) !== i)).toEqual([]);
  });
});

describe.each([
  ['the sample workshop', sample],
  ['the recipes of the tests', recipes],
])('clean recipes: %s', (_, folder) => {
  const files = layupFiles(folder);
  let book: Awaited<ReturnType<typeof opened>>;
  beforeAll(async () => {
    book = await opened(files);
  });
  afterAll(() => book.book.dispose());

  it.each(Object.keys(files).filter((file) => file !== 'first_try.layup'))(
    '%s has neither error nor warning that its builder did not accept',
    async (file) => {
      const found = (await book.findingsIn(file)).filter(
        ({ finding }) => finding.severity !== 'info' && finding.accepted === undefined,
      );
      expect(found.map(({ line, finding }) => `${line} ${finding.rule}: ${sayText(finding.message)}`)).toEqual([]);
    },
  );
});
