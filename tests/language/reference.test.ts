/** The reference in the repository, in the terminal and in the editor is written from the tables; here it is held to them. */
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Book, Material } from '../../language/grammar/generated/ast.ts';
import { rules } from '../../language/rules/generated/rules.ts';
import { limitWords } from '../../language/view/cautions.ts';
import {
  type ReferenceChapter,
  referenceChapter,
  referenceChapters,
  referenceIndex,
} from '../../language/view/reference/chapters.ts';
import { stockTexts } from '../../language/view/reference/materials.ts';
import { DEFERRAL, hazards } from '../../language/words/cautions.ts';
import type { Hazard } from '../../language/words/hazard.ts';
import { PLACES, verbs, words, wordsAt } from '../../language/words/index.ts';
import { laybook } from '../harness/terminal.ts';
import { parsed, viewServices } from './view/parsed.ts';

const root = path.resolve(import.meta.dirname, '../..');
const folder = path.join(root, 'language/reference');
const update = process.env.UPDATE === '1';
const link = (rule: string): string => `../rules/${rule}.md`;
const pages: Readonly<Record<string, string>> = {
  'README.md': referenceIndex((name) => `${name}.md`),
  ...Object.fromEntries(referenceChapters.map((name) => [`${name}.md`, referenceChapter(name, link)])),
};
const chapter = (name: ReferenceChapter): string => referenceChapter(name);

describe('the reference in the repository', () => {
  if (update) {
    mkdirSync(folder, { recursive: true });
    for (const [file, text] of Object.entries(pages)) writeFileSync(path.join(folder, file), text);
  }

  it.each(Object.entries(pages))('%s says what the tables say (UPDATE=1 writes it anew)', (file, text) => {
    expect(readFileSync(path.join(folder, file), 'utf8')).toBe(text);
  });

  it('has no page besides', () => expect(readdirSync(folder).sort()).toEqual(Object.keys(pages).sort()));

  it('is linked from the readme, and leads to pages that exist', () => {
    expect(readFileSync(path.join(root, 'README.md'), 'utf8')).toContain('(language/reference/README.md)');
    const targets = Object.values(pages).flatMap((text) =>
      [...text.matchAll(/\]\(([^)]+)\)/g)].map(([, to]) => to ?? ''),
    );
    expect(targets.length).toBeGreaterThan(rules.length);
    expect(targets.filter((to) => !existsSync(path.join(folder, to)))).toEqual([]);
  });
});

describe('the chapters are whole', () => {
  it('every word at every place', () => {
    const text = chapter('notation');
    const missing = PLACES.flatMap((place) => wordsAt(place))
      .filter((word) => !('sheet' in word))
      .filter(({ word, meaning }) => !text.includes(`**${word}**`) || !text.includes(meaning));
    expect(missing.map(({ word }) => word)).toEqual([]);
    expect(words.length).toBeGreaterThan(400);
  });

  it('every verb with its time and its line on the sheet', () => {
    const text = chapter('steps');
    expect(verbs.filter(({ word, sheet }) => !text.includes(`**${word}**`) || !text.includes(sheet))).toEqual([]);
  });

  it('every rule', () => {
    const text = chapter('rules');
    expect(rules.filter(({ name, title }) => !text.includes(`**${name}**`) || !text.includes(title))).toEqual([]);
  });

  it('every hazard, with its limits and who has the last word', () => {
    const text = chapter('cautions');
    expect(text).toContain(DEFERRAL);
    const told = (hazard: Hazard): readonly string[] => [
      hazard.brief,
      hazard.harm,
      hazard.source,
      ...hazard.limits.map((limit) => limitWords(limit, hazard)),
    ];
    expect(hazards.flatMap(told).filter((words) => !text.includes(words))).toEqual([]);
  });

  it('every material of the stock library, with every line of it', () => {
    const services = viewServices();
    const files = path.join(root, 'language/book/stock');
    const entries = readdirSync(files).flatMap(
      (file) =>
        (parsed(services, readFileSync(path.join(files, file), 'utf8')).parseResult.value as Book)
          .entries as Material[],
    );
    const told = new Map(stockTexts().map((entry) => [`${entry.kind} ${entry.name}`, entry.facts.length]));
    expect([...told].sort()).toEqual(entries.map(({ kind, name, items }) => [`${kind} ${name}`, items.length]).sort());
  });
});

describe('laybook explain', () => {
  const told = async (...args: string[]): Promise<{ code: number; out: string; err: string }> =>
    laybook(root, 'explain', ...args);

  it('lists the chapters, prints each of them, and looks up a word and a material', async () => {
    const list = await told();
    for (const name of referenceChapters) expect(list.out).toContain(`- ${name}: `);
    const steps = await told('steps');
    expect(steps.out).toContain('On the sheet: Pull the peel ply off');
    expect((await told('perforate')).out).toContain('Clauses of `core`');
    expect((await told('foam_pvc_80')).out).toMatch(/density 80 kg\/m3/);
    expect((await told('wrap/short')).out).toContain('How to mend it');
    expect((await told('peroxide')).out).toMatch(/goggles[\s\S]*last word/);
    // dust of foam, of glass and of carbon
    expect((await told('dust')).out.match(/^Source|- Source/gm)).toHaveLength(3);
  });

  it('offers what is spelled alike', async () => {
    const { code, err } = await told('perforat');
    expect([code, err.includes('perforate')]).toEqual([2, true]);
  });
});
