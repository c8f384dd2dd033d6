import { say } from '../text.ts';
import type { SheetWords } from './sheet.ts';

export const sheetWords = (): SheetWords => ({
  begin: say('Before you begin'),
  lots: [say('material'), say('lot'), say('expires')],
  notes: say('Notes'),
  open: say('Stands open'),
  drawings: say('Drawings'),
  cut: say('Cut'),
  sketch: say('sketch'),
  weigh: say('Weigh the dry pieces'),
  steps: say('Steps'),
  accepted: say('Findings that the recipe accepts'),
  accepts: say('Accepted:'),
  caution: say('Caution'),
  cautions: say('Cautions'),
  signOff: say('Sign-off'),
  signHead: ['', say('name and signature'), say('date')],
  signRows: [say('built by'), say('checked by'), say('released by')],
  noCode: say('The name of this recipe is too long for a code to scan.'),
  continued: say('continued'),
  page: say('page {page} of {pages}'),
  lacking: say('The font has no letters for {letters}; a font that has them can be set.'),
});
