import type { styleText } from 'node:util';

export type Style = Parameters<typeof styleText>[0];

/** Where a run writes to and where it stands; tests hand over one that collects. */
export interface Screen {
  /** the folder that paths are relative to */
  readonly folder: string;
  /** the language that the system speaks, as POSIX writes it; none: English */
  readonly language?: string;
  out(text: string): void;
  err(text: string): void;
  /** the text in a style where colours are shown, as it is elsewhere */
  paint(style: Style, text: string): string;
  /** one line from the reader; undefined where there is nobody, or no more */
  ask?(prompt: string): Promise<string | undefined>;
}
