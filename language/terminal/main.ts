/** The command `laybook`. */
import { styleText } from 'node:util';
import { run } from './program.ts';
import { Prompt } from './prompt.ts';
import type { Screen } from './screen.ts';
import { languageOfSystem } from './speak.ts';

const { stdout, stderr } = process;
// NO_COLOR, a dumb terminal and the like are known to `hasColors`.
const colours = stdout.isTTY === true && stdout.hasColors();

const prompt = new Prompt();

const screen: Screen = {
  folder: process.cwd(),
  language: languageOfSystem(process.env) ?? 'en',
  out: (text) => void stdout.write(text),
  err: (text) => void stderr.write(text),
  paint: (style, text) => (colours ? styleText(style, text, { validateStream: false }) : text),
  ask: (words) => prompt.ask(words),
};

// Whoever reads may stop reading: `laybook check | head`.
stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
  process.exit();
});

void run(process.argv.slice(2), screen).then((code) => {
  prompt.close();
  // Not `exit`: what is written may still be on its way.
  process.exitCode = code;
});
