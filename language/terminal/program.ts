import { Argument, Command, CommanderError, Option } from 'commander';
import { cutFormats, cutOrders, cutPapers } from '../protocol/cut-files.ts';
import { safe } from '../view/text.ts';
import { type ExitCode, exitCodes, UsageError } from './exit-codes.ts';
import type { Screen } from './screen.ts';
import { speak } from './speak.ts';
import { version } from './version.ts';

const pathsHelp = `
Paths are files or folders. Folders are read with the folders in them, but for node_modules, dist,
out and names that begin with a dot. Names are looked up in the book, then in the stock library. The
book is the folders given and the folders of the files given; --book says another folder.`;

const exitHelp = `
Findings are told of the paths given, not of the rest of the book. Ends with 0 if all is well, 1 if
there are findings at or above --fail-on, 2 for a wrong call or input that cannot be read, 3 for a
fault of the tool.`;

const cutHelp = `
Drawings are 1:1 in millimetres, with layers for cut, mark, drill and text; a PDF is tiled on pages with
marks to lay them by. By material, all pieces of a roll stand side by side, the warp along it. Ends
with 1 if something of the recipe has no piece.`;

/** Runs one command; never throws. Each command is loaded when it is called. */
export async function run(args: readonly string[], screen: Screen): Promise<ExitCode> {
  let ended: ExitCode = exitCodes.clean;
  const program = programFor(screen, (code) => {
    ended = code;
  });
  try {
    await program.parseAsync(args, { from: 'user' });
    return ended;
  } catch (error) {
    if (error instanceof CommanderError) return error.exitCode === 0 ? exitCodes.clean : exitCodes.usage;
    if (error instanceof UsageError) {
      screen.err(`laybook: ${safe(error.message)}\n`);
      return exitCodes.usage;
    }
    screen.err(
      `laybook broke down; please report it:\n${error instanceof Error ? (error.stack ?? error.message) : String(error)}\n`,
    );
    return exitCodes.internal;
  }
}

/** The day where the shop is, not where the sun is. */
function today(): string {
  const now = new Date();
  const two = (number: number): string => String(number).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

function wholeNumber(text: string): number {
  if (!/^\d{1,6}$/.test(text)) throw new UsageError(`${text} is no whole number`);
  return Number(text);
}

function programFor(screen: Screen, end: (code: ExitCode) => void): Command {
  const program = new Command('laybook')
    .description('Checks composite build recipes (.layup) and tells what they come to.')
    .version(version, '--version', 'print the version')
    .option(
      '--lang <language>',
      'language of what people read, for instance de; that of the system where it is not given',
    )
    .helpOption('--help', 'print this help')
    .helpCommand(false)
    .showHelpAfterError('(laybook --help says how it is called)')
    .hook('preAction', (called, action) => speak(called.opts().lang ?? screen.language, action.opts().format))
    .exitOverride()
    .configureOutput({
      writeOut: screen.out,
      writeErr: screen.err,
      getOutHelpWidth: () => 100,
      getErrHelpWidth: () => 100,
    });
  const command = (usage: string, description: string): Command => program.command(usage).description(description);
  const book = new Option('--book <folder>', 'folder in which names are looked up');

  command('check', 'check recipes, materials, tools, shops and records')
    .addArgument(new Argument('[paths...]', 'files or folders').default(['.'], 'this folder'))
    .addOption(
      new Option('--format <format>', 'how findings are told; sarif and github are for a build server')
        .choices(['text', 'json', 'sarif', 'github'])
        .default('text'),
    )
    .addOption(
      new Option('--fail-on <severity>', 'lightest finding that fails')
        .choices(['error', 'warning', 'info'])
        .default('error'),
    )
    .addOption(book)
    .addHelpText('after', pathsHelp + exitHelp)
    .action(async (paths, options) => end(await (await import('./check.ts')).check(paths, options, screen)));

  command('report', 'tell what a recipe comes to: mass, thickness, resin to mix, cost, layers and steps')
    .argument('<recipe>', 'name of the recipe')
    .addArgument(new Argument('[paths...]', 'files or folders').default(['.'], 'this folder'))
    .option('--size <name>', 'a size of the recipe')
    .addOption(
      new Option('--format <format>', 'how it is told; html is a build sheet to print')
        .choices(['text', 'json', 'markdown', 'html'])
        .default('text'),
    )
    .addOption(
      new Option('--units <system>', 'units of what people read (default: "si")').choices(['si', 'us', 'both']),
    )
    .addOption(book)
    .addHelpText('after', pathsHelp)
    .action(async (recipe, paths, options) =>
      end(await (await import('./report.ts')).report(recipe, paths, options, screen)),
    );

  command('cut', 'write the pieces of a recipe as files for a cutter, or as pages to lay together')
    .argument('<recipe>', 'name of the recipe')
    .addArgument(new Argument('[paths...]', 'files or folders').default(['.'], 'this folder'))
    .requiredOption('--out <folder>', 'folder to write into')
    .option('--size <name>', 'a size of the recipe')
    .addOption(new Option('--quantity <parts>', 'how many parts are cut for').argParser(wholeNumber).default(1))
    .addOption(new Option('--format <format>', 'kind of the files').choices(cutFormats).default('svg'))
    .addOption(new Option('--by <what>', 'a file for each').choices(cutOrders).default('piece'))
    .addOption(new Option('--paper <paper>', 'size of the pages of a PDF').choices(cutPapers).default('a4'))
    .addOption(
      new Option('--units <system>', 'units of sizes on the labels').choices(['si', 'us', 'both']).default('si'),
    )
    .option('--force', 'write over files that laybook did not make or that were changed since')
    .addOption(book)
    .addHelpText('after', cutHelp)
    .action(async (recipe, paths, options) =>
      end(await (await import('./cut.ts')).cut(recipe, paths, options, screen)),
    );

  command('draw', 'write the plan or the section of a recipe as a drawing')
    .argument('<recipe>', 'name of the recipe')
    .addArgument(new Argument('<view>', 'what is drawn').choices(['plan', 'section']))
    .addArgument(new Argument('[paths...]', 'files or folders').default(['.'], 'this folder'))
    .requiredOption('--out <file>', 'file to write: .svg, .pdf or .dxf')
    .option('--size <name>', 'a size of the recipe')
    .option('--layers <names>', 'layers that are drawn, with commas: outline,cloth,core,process,dimension ...')
    .addOption(new Option('--paper <paper>', 'size of the page of a PDF').choices(cutPapers).default('a4'))
    .addOption(new Option('--units <system>', 'units of figures').choices(['si', 'us', 'both']).default('si'))
    .option('--force', 'write over what laybook did not make or what was changed since')
    .addOption(book)
    .addHelpText('after', pathsHelp)
    .action(async (recipe, view, paths, options) =>
      end(await (await import('./draw.ts')).draw(recipe, view, paths, options, screen)),
    );

  command('sheet', 'write the build sheet of one build, to print: steps, pots, pieces, blanks and cautions')
    .argument('<recipe>', 'name of the recipe')
    .addArgument(new Argument('[paths...]', 'files or folders').default(['.'], 'this folder'))
    .requiredOption('--out <file>', 'file to write, .pdf or .html')
    .option('--size <name>', 'a size of the recipe')
    .option('--number <number>', 'number of the build')
    .option('--date <day>', 'day of the build, 2026-05-14; a blank to write on where it is not given')
    .addOption(new Option('--paper <paper>', 'size of the pages').choices(['a4', 'letter']).default('a4'))
    .option('--font <file>', 'a font (.ttf, .otf) for letters that ours lacks; for PDF')
    .addOption(new Option('--units <system>', 'units of figures').choices(['si', 'us', 'both']).default('si'))
    .option('--force', 'write over what laybook did not make or what was changed since')
    .addOption(book)
    .action(async (recipe, paths, options) =>
      end(await (await import('./sheet.ts')).sheet(recipe, paths, options, screen)),
    );

  command('cautions', 'tell what can hurt at the steps of a recipe, with the limits of the agencies')
    .argument('<recipe>', 'name of the recipe')
    .addArgument(new Argument('[paths...]', 'files or folders').default(['.'], 'this folder'))
    .option('--size <name>', 'a size of the recipe')
    .addOption(book)
    .action(async (recipe, paths, options) =>
      end(await (await import('./cautions.ts')).cautions(recipe, paths, options, screen)),
    );

  command('record', 'ask for the record of a build, line by line, and write it; stop at any time and go on later')
    .argument('<recipe>', 'name of the recipe')
    .addArgument(
      new Argument('[folder]', 'folder of the workshop; the record goes into its folder records').default('.'),
    )
    .option('--size <name>', 'the size that was built')
    .option('--number <number>', 'number of the build; the next where it is not given')
    .addOption(new Option('--date <day>', 'day of the build').default(today(), 'today'))
    .addOption(book)
    .action(async (recipe, folder, options) =>
      end(await (await import('./record.ts')).record(recipe, folder, options, screen)),
    );

  command('records', 'tell what was built by a recipe against its plan, the spread of the shop, and what drifts')
    .argument('<recipe>', 'name of the recipe')
    .addArgument(new Argument('[paths...]', 'files or folders').default(['.'], 'this folder'))
    .option('--out <file>', 'write a page with charts, .html')
    .addOption(new Option('--format <format>', 'how it is told').choices(['text', 'json']).default('text'))
    .addOption(new Option('--units <system>', 'units of figures').choices(['si', 'us', 'both']).default('si'))
    .option('--force', 'write over what laybook did not make or what was changed since')
    .addOption(book)
    .action(async (recipe, paths, options) =>
      end(await (await import('./records.ts')).records(recipe, paths, options, screen)),
    );

  command('lots', 'tell which parts contain which lot, and which lots are expired or about to be')
    .addArgument(new Argument('[paths...]', 'files or folders').default(['.'], 'this folder'))
    .option('--lot <number>', 'only this lot: the parts that contain it')
    .option('--part <recipe>', 'only the lots that went into parts of this recipe')
    .option('--number <number>', 'with --part: number or day of one build')
    .addOption(
      new Option('--within <days>', 'a lot that expires within so many days is about to')
        .argParser(wholeNumber)
        .default(60),
    )
    .addOption(new Option('--today <day>', 'the day that is taken for today').default(today(), 'today'))
    .addOption(new Option('--format <format>', 'how it is told').choices(['text', 'json']).default('text'))
    .addOption(book)
    .action(async (paths, options) => end(await (await import('./lots.ts')).lots(paths, options, screen)));

  command('format', 'bring files into their form: indents and spaces; no line is moved, joined or split')
    .argument('<paths...>', 'files or folders')
    .option('--check', 'change nothing; end with 1 if a file is not in its form')
    .action(async (paths, options) => end(await (await import('./format.ts')).format(paths, options, screen)));

  command('explain', 'tell what a rule checks and how to mend it, or look up a word, a material or a chapter')
    .argument('[what]', 'wrap/short, perforate, foam_80, or a chapter: notation, units, steps, materials, rules')
    .action(async (what) => end(await (await import('./explain.ts')).explain(what, screen)));

  return program;
}
