/** What whoever cuts may choose between; the first of each is what is taken where nothing is said. */
export const cutFormats = ['svg', 'dxf', 'pdf'] as const;
export type CutFormat = (typeof cutFormats)[number];

/** A file a piece, or all pieces of a material side by side. */
export const cutOrders = ['piece', 'material'] as const;
