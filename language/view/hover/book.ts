import type { Place } from '../../../calc/model/index.ts';
import type { Analysis } from '../../analysis/analysis.ts';
import type { Style } from '../text.ts';

/** What hovers over the book ask. */
export interface HoverBook {
  readonly analysis: Analysis;
  /** how figures are shown, as it is set now */
  style(): Style;
  textAt(place: Place): TextAt | undefined;
  /** the editor runs commands by links in a hover */
  readonly commandLinks?: boolean;
}

/** What stands at a place, in a file of the workspace or of the stock library. */
export interface TextAt {
  readonly text: string;
  /** address with the line, for a link */
  readonly link: string;
  /** `materials.layup:12` */
  readonly name: string;
}
