import { Argument, Command, CommanderError, Option } from 'commander';
import { text } from '../../calc/figure/figure.ts';
import { cutFormats, cutOrders, cutPapers } from '../protocol/cut-files.ts';
import { say, sayText } from '../view/text.ts';
import { type ExitCode, exitCodes, UsageError } from './exit-codes.ts';
import { cutHelp, exitHelp, help, helpWidth, pathsHelp } from './help.ts';
import type { Screen } from './screen.ts';
import { languageAsked, speak } from './speak.ts';
import { version } from './version.ts';
import { refusalOf } from './wrong-calls.ts';

/** Runs one command; never throws. Each command is loaded when it is called. */
export async function run(args: readonly string[], screen: Screen): Promise<ExitCode> {
  const language = languageAsked(args) ?? screen.language;
  // Before anything is read of the call: what is wrong with it is told in the language of whoever typed it.
  speak(language, undefined);
  let ended: ExitCode = exitCodes.clean;
  const program = programFor(screen, (code) => {
    ended = code;
  });
  try {
    await program.parseAsync(args, { from: 'user' });
    return ended;
  } catch (error) {
    if (error instanceof CommanderError) return error.exitCode === 0 ? exitCodes.clean : exitCodes.usage;
    // People read this, whatever format was asked for.
    speak(language, undefined);
    if (error instanceof UsageError) {
      screen.err(`laybook: ${sayText(error.words)}\n`);
      return exitCodes.usage;
    }
    const told = error instanceof Error ? (error.stack ?? error.message) : String(error);
    screen.err(`${say('laybook broke down; please report it:')}\n${told}\n`);
    return exitCodes.internal;
  }
}

/** The day where the shop is, not where the sun is. */
function today(): string {
  const now = new Date();
  const two = (number: number): string => String(number).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

function wholeNumber(typed: string): number {
  if (!/^\d{1,6}$/.test(typed)) throw new UsageError(text('{typed} is no whole number', { typed }));
  return Number(typed);
}

function programFor(screen: Screen, end: (code: ExitCode) => void): Command {
  const program = new Command('laybook')
    .description(say('Checks composite build recipes (.layup) and tells what they come to.'))
    .version(version, '--version', say('print the version'))
    .option(
      `--lang <${say('language')}>`,
      say('language of what people read, for instance de; that of the system where it is not given'),
    )
    .helpOption('--help', say('print this help'))
    .helpCommand(false)
    .showHelpAfterError(`(${say('laybook --help says how it is called')})`)
    .configureHelp(help())
    .hook('preAction', (called, action) => speak(called.opts().lang ?? screen.language, action.opts().format))
    .exitOverride()
    .configureOutput({
      writeOut: screen.out,
      writeErr: screen.err,
      getOutHelpWidth: () => helpWidth,
      getErrHelpWidth: () => helpWidth,
      outputError: (said, write) => write(`laybook: ${sayText(refusalOf(said))}\n`),
    });
  const command = (usage: string, description: string): Command => program.command(usage).description(description);
  const paths = (): Argument =>
    new Argument(`[${say('paths')}...]`, say('files or folders')).default(['.'], say('this folder'));
  const recipe = new Argument(`<${say('recipe')}>`, say('name of the recipe'));
  const size = new Option(`--size <${say('name')}>`, say('a size of the recipe'));
  const units = (meaning: string): Option =>
    new Option(`--units <${say('system')}>`, meaning).choices(['si', 'us', 'both']);
  const book = new Option(`--book <${say('folder')}>`, say('folder in which names are looked up'));

  command('check', say('check recipes, materials, tools, shops and records'))
    .addArgument(paths())
    .addOption(
      new Option(`--format <${say('format')}>`, say('how findings are told; sarif and github are for a build server'))
        .choices(['text', 'json', 'sarif', 'github'])
        .default('text'),
    )
    .addOption(
      new Option(`--fail-on <${say('severity')}>`, say('lightest finding that fails'))
        .choices(['error', 'warning', 'info'])
        .default('error'),
    )
    .addOption(book)
    .addHelpText('after', pathsHelp() + exitHelp())
    .action(async (paths, options) => end(await (await import('./check.ts')).check(paths, options, screen)));

  command('report', say('tell what a recipe comes to: mass, thickness, resin to mix, cost, layers and steps'))
    .addArgument(recipe)
    .addArgument(paths())
    .addOption(size)
    .addOption(
      new Option(`--format <${say('format')}>`, say('how it is told; html is a build sheet to print'))
        .choices(['text', 'json', 'markdown', 'html'])
        .default('text'),
    )
    .addOption(
      // that nothing was said is told from `si`: figures for machines are SI, and to ask for others is an error
      units(say('units of what people read')).default(undefined, 'si'),
    )
    .addOption(book)
    .addHelpText('after', pathsHelp())
    .action(async (recipe, paths, options) =>
      end(await (await import('./report.ts')).report(recipe, paths, options, screen)),
    );

  command('cut', say('write the pieces of a recipe as files for a cutter, or as pages to lay together'))
    .addArgument(recipe)
    .addArgument(paths())
    .requiredOption(`--out <${say('folder')}>`, say('folder to write into'))
    .addOption(size)
    .addOption(
      new Option(`--quantity <${say('parts')}>`, say('how many parts are cut for')).argParser(wholeNumber).default(1),
    )
    .addOption(new Option(`--format <${say('format')}>`, say('kind of the files')).choices(cutFormats).default('svg'))
    .addOption(new Option(`--by <${say('what')}>`, say('a file for each')).choices(cutOrders).default('piece'))
    .addOption(
      new Option(`--paper <${say('paper')}>`, say('size of the pages of a PDF')).choices(cutPapers).default('a4'),
    )
    .addOption(units(say('units of sizes on the labels')).default('si'))
    .option('--force', say('write over files that laybook did not make or that were changed since'))
    .addOption(book)
    .addHelpText('after', cutHelp())
    .action(async (recipe, paths, options) =>
      end(await (await import('./cut.ts')).cut(recipe, paths, options, screen)),
    );

  command('draw', say('write the plan or the section of a recipe as a drawing'))
    .addArgument(recipe)
    .addArgument(new Argument(`<${say('view')}>`, say('what is drawn')).choices(['plan', 'section']))
    .addArgument(paths())
    .requiredOption(`--out <${say('file')}>`, say('file to write: .svg, .pdf or .dxf'))
    .addOption(size)
    .option(
      `--layers <${say('names')}>`,
      say('layers that are drawn, with commas: outline,cloth,core,process,dimension ...'),
    )
    .addOption(
      new Option(`--paper <${say('paper')}>`, say('size of the page of a PDF')).choices(cutPapers).default('a4'),
    )
    .addOption(units(say('units of figures')).default('si'))
    .option('--force', say('write over what laybook did not make or what was changed since'))
    .addOption(book)
    .addHelpText('after', pathsHelp())
    .action(async (recipe, view, paths, options) =>
      end(await (await import('./draw.ts')).draw(recipe, view, paths, options, screen)),
    );

  command('sheet', say('write the build sheet of one build, to print: steps, pots, pieces, blanks and cautions'))
    .addArgument(recipe)
    .addArgument(paths())
    .requiredOption(`--out <${say('file')}>`, say('file to write, .pdf or .html'))
    .addOption(size)
    .option(`--number <${say('number')}>`, say('number of the build'))
    .option(`--date <${say('day')}>`, say('day of the build, 2026-05-14; a blank to write on where it is not given'))
    .addOption(
      new Option(`--paper <${say('paper')}>`, say('size of the pages')).choices(['a4', 'letter']).default('a4'),
    )
    .option(`--font <${say('file')}>`, say('a font (.ttf, .otf) for letters that ours lacks; for PDF'))
    .addOption(units(say('units of figures')).default('si'))
    .option('--force', say('write over what laybook did not make or what was changed since'))
    .addOption(book)
    .action(async (recipe, paths, options) =>
      end(await (await import('./sheet.ts')).sheet(recipe, paths, options, screen)),
    );

  command('cautions', say('tell what can hurt at the steps of a recipe, with the limits of the agencies'))
    .addArgument(recipe)
    .addArgument(paths())
    .addOption(size)
    .addOption(book)
    .action(async (recipe, paths, options) =>
      end(await (await import('./cautions.ts')).cautions(recipe, paths, options, screen)),
    );

  command('record', say('ask for the record of a build, line by line, and write it; stop at any time and go on later'))
    .addArgument(recipe)
    .addArgument(
      new Argument(
        `[${say('folder')}]`,
        say('folder of the workshop; the record goes into its folder records'),
      ).default('.', say('this folder')),
    )
    .option(`--size <${say('name')}>`, say('the size that was built'))
    .option(`--number <${say('number')}>`, say('number of the build; the next where it is not given'))
    .addOption(new Option(`--date <${say('day')}>`, say('day of the build')).default(today(), say('today')))
    .addOption(book)
    .action(async (recipe, folder, options) =>
      end(await (await import('./of-builds.ts')).record(recipe, folder, options, screen)),
    );

  command('records', say('tell what was built by a recipe against its plan, the spread of the shop, and what drifts'))
    .addArgument(recipe)
    .addArgument(paths())
    .option(`--out <${say('file')}>`, say('write a page with charts, .html'))
    .addOption(
      new Option(`--format <${say('format')}>`, say('how it is told')).choices(['text', 'json']).default('text'),
    )
    .addOption(units(say('units of figures')).default('si'))
    .option('--force', say('write over what laybook did not make or what was changed since'))
    .addOption(book)
    .action(async (recipe, paths, options) =>
      end(await (await import('./of-builds.ts')).records(recipe, paths, options, screen)),
    );

  command('lots', say('tell which parts contain which lot, and which lots are expired or about to be'))
    .addArgument(paths())
    .option(`--lot <${say('number')}>`, say('only this lot: the parts that contain it'))
    .option(`--part <${say('recipe')}>`, say('only the lots that went into parts of this recipe'))
    .option(`--number <${say('number')}>`, say('with --part: number or day of one build'))
    .addOption(
      new Option(`--within <${say('days')}>`, say('a lot that expires within so many days is about to'))
        .argParser(wholeNumber)
        .default(60),
    )
    .addOption(
      new Option(`--today <${say('day')}>`, say('the day that is taken for today')).default(today(), say('today')),
    )
    .addOption(
      new Option(`--format <${say('format')}>`, say('how it is told')).choices(['text', 'json']).default('text'),
    )
    .addOption(book)
    .action(async (paths, options) => end(await (await import('./of-builds.ts')).lots(paths, options, screen)));

  command('format', say('bring files into their form: indents and spaces; no line is moved, joined or split'))
    .argument(`<${say('paths')}...>`, say('files or folders'))
    .option('--check', say('change nothing; end with 1 if a file is not in its form'))
    .action(async (paths, options) => end(await (await import('./format.ts')).format(paths, options, screen)));

  command('explain', say('tell what a rule checks and how to mend it, or look up a word, a material or a chapter'))
    .argument(
      `[${say('what')}]`,
      say('wrap/short, perforate, foam_80, or a chapter: notation, units, steps, materials, rules, cautions'),
    )
    .action(async (what) => end(await (await import('./explain.ts')).explain(what, screen)));

  return program;
}
