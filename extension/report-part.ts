/** The report with the part that was asked for on top, below the title: `line` is that of its heading, 0 where there is none. */
export function partFirst(markdown: string, line: number): string {
  const lines = markdown.split('\n');
  const first = lines.findIndex((each) => each.startsWith('## '));
  if (line <= first || first < 0) return markdown;
  const next = lines.findIndex((each, at) => at > line && each.startsWith('## '));
  const end = next < 0 ? lines.length : next;
  return [...lines.slice(0, first), ...lines.slice(line, end), ...lines.slice(first, line), ...lines.slice(end)].join(
    '\n',
  );
}
