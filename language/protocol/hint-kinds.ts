/** Figures beside a line, in the order in which they stand; each is a setting, `laybook.hints.KIND`. */
export const hintKinds = ['mass', 'thickness', 'cost', 'minutes', 'amount'] as const;
export type HintKind = (typeof hintKinds)[number];
export type HintChoice = Readonly<Record<HintKind, boolean>>;
