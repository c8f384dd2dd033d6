import type { Argument, HelpConfiguration, Option } from 'commander';
import { say } from '../view/text.ts';
import { wrapped } from './width.ts';

export const helpWidth = 100;

const paragraph = (said: string): string => `\n${wrapped(said, helpWidth).join('\n')}\n`;

export const pathsHelp = (): string =>
  paragraph(
    say(
      'Paths are files or folders. Folders are read with the folders in them, but for node_modules, dist, out and names that begin with a dot. Names are looked up in the book, then in the stock library. The book is the folders given and the folders of the files given; --book says another folder.',
    ),
  );

export const exitHelp = (): string =>
  paragraph(
    say(
      'Findings are told of the paths given, not of the rest of the book. Ends with 0 if all is well, 1 if there are findings at or above --fail-on, 2 for a wrong call or input that cannot be read, 3 for a fault of the tool.',
    ),
  );

export const cutHelp = (): string =>
  paragraph(
    say(
      'Drawings are 1:1 in millimetres, with layers for cut, mark, drill and text; a PDF is tiled on pages with marks to lay them by. By material, all pieces of a roll stand side by side, the warp along it. Ends with 1 if something of the recipe has no piece.',
    ),
  );

/** Words of commander that stand in a call: `laybook check [options] [paths...]`. */
const usage = (said: string): string =>
  said.replace('[options]', `[${say('options')}]`).replace('[command]', `[${say('command')}]`);

/** What an option or an argument is, which values it takes, and which it has where nothing is said. */
function described({ description, argChoices, defaultValue, defaultValueDescription }: Option | Argument): string {
  const usual = defaultValueDescription ?? defaultValue;
  const more = [
    ...(argChoices === undefined ? [] : [say('choices: {choices}', { choices: argChoices.join(', ') })]),
    ...(usual === undefined ? [] : [say('default: {value}', { value: String(usual) })]),
  ];
  return more.length === 0 ? description : `${description} (${more.join(', ')})`;
}

/** The help of commander in the language of the reader. */
export const help = (): HelpConfiguration => {
  const titles: Readonly<Record<string, string>> = {
    'Usage:': say('Usage:'),
    'Arguments:': say('Arguments:'),
    'Options:': say('Options:'),
    'Commands:': say('Commands:'),
  };
  return {
    styleTitle: (title) => titles[title] ?? title,
    commandUsage: (command) => usage([command.parent?.name() ?? '', command.name(), command.usage()].join(' ').trim()),
    subcommandTerm: (command) => usage([command.name(), command.usage()].join(' ')),
    optionDescription: described,
    argumentDescription: described,
  };
};
