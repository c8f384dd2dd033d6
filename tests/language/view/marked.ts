/** A text with `<|>` where the cursor stands. */
export function marked(text: string): { readonly text: string; readonly offset: number } {
  const offset = text.indexOf('<|>');
  if (offset < 0 || text.indexOf('<|>', offset + 1) >= 0) throw new Error('the text needs one <|>');
  return { text: text.slice(0, offset) + text.slice(offset + 3), offset };
}
