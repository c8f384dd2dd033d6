/** Words of the page; the editor puts those of the reader's language in their place. */
export const words = {
  plan: 'Plan',
  section: 'Section',
  views: 'What is shown',
  fit: 'Fit',
  closer: 'Closer',
  farther: 'Farther',
  follows: 'Follows the cursor',
  size: 'Size',
  asWritten: 'as written',
  layers: 'Layers',
  save: 'Save or copy',
  saveAs: 'Save as {format}',
  copy: 'Copy as SVG',
  help: 'Arrow keys move the drawing, plus and minus go closer and farther, 0 fits it. Tab goes from thing to thing, Enter to its line, Escape leaves.',
  table: 'As a table',
  what: 'What',
  where: 'Where',
  measures: 'Size',
  line: 'Line',
  goTo: 'Go to the line',
  old: 'As of before. {why}',
  nothingChosen: 'Nothing is chosen: click a shape, or put the cursor on a line.',
};

export type Words = typeof words;

/** Puts figures into words. */
export const say = (template: string, figures: Readonly<Record<string, string | number>>): string =>
  template.replace(/\{(\w+)\}/g, (whole, name: string) => String(figures[name] ?? whole));
