/** A text without its marks: `<|>` is a cursor, `<|words|>` a range. Offsets are those of the text without marks. */
export interface MarkedText {
  readonly text: string;
  readonly cursors: readonly number[];
  readonly ranges: readonly { readonly start: number; readonly end: number }[];
}

export function readMarks(marked: string): MarkedText {
  const cursors: number[] = [];
  const ranges: { start: number; end: number }[] = [];
  const open: number[] = [];
  let text = '';
  let from = 0;
  for (const mark of marked.matchAll(/<\|>|<\||\|>/g)) {
    text += marked.slice(from, mark.index);
    from = mark.index + mark[0].length;
    if (mark[0] === '<|>') cursors.push(text.length);
    else if (mark[0] === '<|') open.push(text.length);
    else {
      const start = open.pop();
      if (start === undefined) throw new Error('a |> without its <|');
      ranges.push({ start, end: text.length });
    }
  }
  if (open.length > 0) throw new Error('a <| without its |>');
  ranges.sort((a, b) => a.start - b.start);
  return { text: text + marked.slice(from), cursors, ranges };
}
