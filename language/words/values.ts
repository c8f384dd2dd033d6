import { argument } from './arguments.ts';
import type { Word } from './types.ts';

/** States that the bench goes by, and the other words that may stand behind `until`, `when`, `trim`, `postcure` and `lay`. */
export const states: readonly Word[] = [
  {
    word: 'tacky',
    at: ['value of until'],
    example: 'wait until tacky',
    meaning: 'It sticks, but the glove comes away clean: the next layer may go on.',
  },
  { word: 'gel', at: ['value of until'], example: 'vacuum 50 mbar absolute until gel', meaning: 'It no longer flows.' },
  {
    word: 'cool',
    at: ['value of until'],
    example: 'wait until cool',
    meaning: 'The heat of the reaction is gone: hand-warm.',
  },
  { word: 'hard', at: ['value of until'], example: 'wait until hard', meaning: 'A fingernail leaves no mark.' },
  {
    word: 'full',
    at: ['value of when'],
    example: 'clamp f1 when full',
    meaning: 'The resin has reached the edge everywhere.',
  },
  {
    word: 'front',
    at: ['value of when'],
    takes: [argument('point', { after: 'at' })],
    example: 'open two when front at (350 mm, 0 mm)',
    meaning: 'The resin front has passed this point.',
  },
  {
    word: 'is',
    at: ['value of when'],
    takes: [argument('word', { words: ['running'] })],
    example: 'clamp one when two is running',
    meaning: 'Said of another line.',
  },
  { word: 'net', at: ['value of trim'], example: 'trim net', meaning: 'To the finished edge, after the cure.' },
  {
    word: 'flash',
    at: ['value of trim'],
    example: 'trim flash',
    meaning: 'Only the thin rim of resin; the cloth already ends at the edge.',
  },
  {
    word: 'green',
    at: ['value of trim'],
    example: 'trim green',
    meaning: 'Soon after gel, with a knife, while it is leathery. Later it has to be sawn.',
  },
  {
    word: 'free',
    at: ['value of postcure'],
    example: 'postcure free { hold 8 h at 50 degC }',
    meaning: 'Standing by itself. Above what it has reached so far it sags.',
  },
  {
    word: 'flat',
    at: ['value of postcure'],
    example: 'postcure flat { hold 8 h at 50 degC }',
    meaning: 'Lying on a flat table.',
  },
  {
    word: 'hung',
    at: ['value of postcure'],
    example: 'postcure hung { hold 8 h at 50 degC }',
    meaning: 'Hanging, so that its own weight pulls it straight.',
  },
  {
    word: 'on',
    at: ['value of postcure'],
    takes: [argument('word', { words: ['tool'] })],
    example: 'postcure on tool { hold 8 h at 50 degC }',
    meaning: 'Still on its tool: it cannot distort, and the tool must bear the heat.',
  },
  { word: 'stack', at: ['value of lay'], example: 'lay stack', meaning: 'All layers of the stack.' },
  { word: 'rest', at: ['value of lay'], example: 'lay rest', meaning: 'All layers that have not been laid yet.' },
  { word: 'kit', at: ['value of lay'], example: 'lay kit', meaning: 'What was joined on the bench.' },
];
