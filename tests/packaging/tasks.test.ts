/** Tasks that the editor offers are subcommands that the terminal has; each view of a recipe has its place in a menu. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it } from 'vitest';
import { manifestIn } from '../harness/manifest.ts';
import { laybook } from '../harness/terminal.ts';

const root = path.resolve(import.meta.dirname, '../..');
const { contributes } = manifestIn('en');

it('a task names a subcommand; the extension takes the same ones, and their findings are read by the matcher', async () => {
  const [definition] = contributes.taskDefinitions;
  const source = readFileSync(path.join(root, 'extension/tasks.ts'), 'utf8');
  const taken = /taskCommands = \[(.*)\]/.exec(source)?.[1]?.match(/\w+/g);
  expect(taken).toEqual(definition.properties.command.enum);
  const { out } = await laybook(root, '--help');
  for (const command of definition.properties.command.enum) expect(out).toMatch(new RegExp(`^ {2}${command} `, 'm'));
  expect(source).toContain(`'laybook', {`);
  expect(source).toContain(`'$${contributes.problemMatchers[0].name}'`);
});

it('a recipe file has its views in the Explorer, and its icons in the editor', () => {
  const commandsOf = (menu: string): string[] =>
    contributes.menus[menu].map(({ command }: { readonly command: string }) => command);
  const known = new Map<string, { readonly icon?: string }>(
    contributes.commands.map((each: { readonly command: string }) => [each.command, each]),
  );
  expect(commandsOf('explorer/context')).toContain('laybook.showPlan');
  for (const menu of Object.keys(contributes.menus))
    for (const command of commandsOf(menu)) expect([...known.keys()], menu).toContain(command);
  // an icon without a picture would be its whole title
  for (const command of commandsOf('editor/title')) expect(known.get(command)?.icon, command).toMatch(/^\$\(/);
});
