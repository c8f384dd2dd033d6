/** `laybook check` for build servers: the Static Analysis Results Interchange Format, and workflow commands of GitHub Actions. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { rules } from '../../language/rules/generated/rules.ts';
import { version } from '../../language/terminal/version.ts';
import { folderOf, laybook } from '../harness/terminal.ts';

const sample = path.resolve(import.meta.dirname, '../../extension/sample');
const files = [
  'first_try.layup',
  'sled_deck.layup',
  'side_panel.layup',
  'materials.layup',
  'tools.layup',
  'shop.layup',
].map((name) => [name, readFileSync(path.join(sample, name), 'utf8')]);
const accepted = 'fabric cloth "C, 100 %: new" {\n  roll 1 m by 2 q\n}\n';

let place: ReturnType<typeof folderOf>;
beforeAll(() => {
  place = folderOf({ ...Object.fromEntries(files), 'a folder/own list.layup': accepted });
});
afterAll(() => place.dispose());

interface Region {
  readonly startLine: number;
  readonly startColumn: number;
  readonly endLine: number;
  readonly endColumn: number;
}
interface Location {
  readonly physicalLocation: { readonly artifactLocation: { readonly uri: string }; readonly region: Region };
}
interface Result {
  readonly ruleId: string;
  readonly ruleIndex: number;
  readonly level: string;
  readonly message: { readonly text: string };
  readonly locations: readonly Location[];
  readonly relatedLocations?: readonly (Location & {
    readonly id: number;
    readonly message: { readonly text: string };
  })[];
  readonly suppressions?: readonly { readonly kind: string; readonly justification: string }[];
}

/** What OASIS SARIF 2.1.0 asks of a log, by the paragraphs of the standard. */
describe('findings as SARIF', () => {
  let log: {
    readonly version: string;
    readonly runs: readonly {
      readonly tool: {
        readonly driver: {
          readonly name: string;
          readonly semanticVersion: string;
          readonly rules: readonly { readonly id: string }[];
        };
      };
      readonly columnKind: string;
      readonly results: readonly Result[];
    }[];
  };
  let json: {
    readonly findings: readonly {
      readonly rule: string;
      readonly message: string;
      readonly accepted: string | null;
      readonly file: string;
      readonly range: { readonly start: { readonly line: number; readonly character: number } };
    }[];
  };
  beforeAll(async () => {
    log = JSON.parse((await laybook(place.folder, 'check', '--format', 'sarif')).out);
    json = JSON.parse((await laybook(place.folder, 'check', '--format', 'json')).out);
  });
  const results = () => log.runs[0]?.results ?? [];

  it('names its version, its tool and how columns are counted (3.13.2, 3.18, 3.14.17)', () => {
    expect(log.version).toBe('2.1.0');
    expect(log.runs).toHaveLength(1);
    expect(log.runs[0]?.tool.driver).toMatchObject({ name: 'laybook', semanticVersion: version });
    expect(log.runs[0]?.columnKind).toBe('utf16CodeUnits');
  });

  it('holds every finding, its words and its place from 1 on (3.27, 3.30.5, 3.30.6)', () => {
    expect(results().length).toBe(json.findings.length);
    for (const [i, { ruleId, message, locations }] of results().entries()) {
      const same = json.findings[i];
      expect([ruleId, message.text]).toEqual([same?.rule, same?.message]);
      const { artifactLocation, region } = locations[0]?.physicalLocation ?? {};
      expect(decodeURIComponent(artifactLocation?.uri ?? '')).toBe(same?.file);
      expect(region?.startLine).toBe((same?.range.start.line ?? 0) + 1);
      expect(region?.startColumn).toBe((same?.range.start.character ?? 0) + 1);
      expect(region?.endLine).toBeGreaterThanOrEqual(region?.startLine ?? 0);
    }
  });

  it('points each result to its rule, and uses no level but those that there are (3.27.6, 3.27.10)', () => {
    const { rules: named } = log.runs[0]?.tool.driver ?? { rules: [] };
    const known = new Set(rules.map(({ name }) => name));
    for (const { ruleId, ruleIndex, level } of results()) {
      expect(named[ruleIndex]?.id).toBe(ruleId);
      expect(known.has(ruleId as (typeof rules)[number]['name'])).toBe(true);
      expect(['error', 'warning', 'note']).toContain(level);
    }
  });

  it('has addresses that can be read as such (3.4.3), other places of a finding with numbers (3.28.2)', () => {
    const addresses = results().map(({ locations }) => locations[0]?.physicalLocation.artifactLocation.uri);
    expect(addresses).toContain('a%20folder/own%20list.layup');
    const with_ = results().filter(({ relatedLocations }) => relatedLocations !== undefined);
    expect(with_.length).toBeGreaterThan(0);
    for (const { relatedLocations = [] } of with_)
      expect(relatedLocations.map(({ id }) => id)).toEqual([...relatedLocations.keys()]);
  });

  it('tells what a line accepts as suppressed in the source, with the reason (3.35)', () => {
    const silenced = results().flatMap(({ suppressions = [] }) => suppressions);
    const reasons = json.findings.flatMap(({ accepted: reason }) => reason ?? []);
    expect(silenced.map(({ justification }) => justification)).toEqual(reasons);
    expect(reasons.length).toBeGreaterThan(0);
    expect(new Set(silenced.map(({ kind }) => kind))).toEqual(new Set(['inSource']));
  });
});

describe('findings as workflow commands', () => {
  it('are one line each, which names file, line and rule', async () => {
    const { out, code } = await laybook(place.folder, 'check', '--format', 'github');
    expect(code).toBe(1);
    const lines = out.trimEnd().split('\n');
    for (const line of lines)
      expect(line).toMatch(
        /^::(error|warning|notice) file=[^,]+,line=\d+,endLine=\d+(,col=\d+,endColumn=\d+)?,title=[a-z0-9/-]+::\S/,
      );
    expect(lines.some((line) => /first_try\.layup,line=29,.*title=wrap\/short::outer reaches 30 mm/.test(line))).toBe(
      true,
    );
  });

  it('write what would end a command as its code: per cent, line end, comma and colon', async () => {
    const made = folderOf({ 'a,b:c.layup': accepted });
    const { out } = await laybook(made.folder, 'check', '--format', 'github');
    made.dispose();
    expect(out).toContain('file=a%2Cb%3Ac.layup,');
    expect(out).not.toMatch(/%(?!25|0D|0A|3A|2C)/);
  });

  it('say nothing of what is accepted', async () => {
    const text = await laybook(place.folder, 'check', '--format', 'github');
    const json = JSON.parse((await laybook(place.folder, 'check', '--format', 'json')).out);
    const open = json.findings.filter(({ accepted: reason }: { accepted: string | null }) => reason === null);
    expect(text.out.trimEnd().split('\n')).toHaveLength(open.length);
  });
});
