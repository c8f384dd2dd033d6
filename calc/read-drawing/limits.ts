/** What a drawing may ask of the reader. Files come from other people; none may make the editor wait or fill its memory. */
export const limits = {
  /** bytes of a file */
  svgText: 10_000_000,
  dxfText: 20_000_000,
  /** nested elements */
  depth: 256,
  elements: 200_000,
  /** commands of one path */
  pathCommands: 100_000,
  /** elements that come out of `use` or INSERT */
  svgExpanded: 50_000,
  dxfExpanded: 100_000,
  /** `use` within `use` */
  useDepth: 64,
  /** blocks within blocks */
  blockDepth: 16,
  /** straights and arcs of a whole drawing */
  vertices: 100_000,
  /** a coordinate, m */
  furthest: 100,
  splineDegree: 25,
  /** problems that are told of one file */
  problems: 20,
} as const;
