/** Parts of a report that a view may open: each begins at a heading. */
export const reportParts = ['mass', 'thickness', 'resin', 'cost'] as const;
export type ReportPart = (typeof reportParts)[number];

/** Request `laybook/report`: what a recipe comes to, as Markdown, in the units and the locale of the editor. */
export const reportRequest = 'laybook/report';
export interface ReportParams {
  /** the file of the recipe */
  readonly uri: string;
  readonly recipe: string;
  readonly size?: string;
  readonly part?: ReportPart;
}
export interface ReportResult {
  readonly markdown: string;
  /** line of the part's heading, from zero; 0 where the report has no such part */
  readonly line: number;
}

/** Argument of the command `laybook.nextFinding`: the first finding behind this line, unless the cursor stands further on in the file. */
export interface NextFinding {
  readonly uri: string;
  /** from zero */
  readonly line: number;
}
