/**
 * The text of a drawing. Most are UTF-8; an older DXF file says its code page in its head (AutoCAD DXF reference, header variable
 * $DWGCODEPAGE), an SVG file its encoding in the XML declaration (XML 1.0, section 4.3.3).
 */
export function drawingText(bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder(encodingOf(new TextDecoder('windows-1252').decode(bytes.subarray(0, head)))).decode(bytes);
  }
}

/** Bytes at the beginning in which a file says how it is written. */
const head = 65_536;

function encodingOf(beginning: string): string {
  // UTF-16 is told of by the reader
  if (beginning.includes('\0')) return 'utf-8';
  const page = /\$DWGCODEPAGE\s+3\s+(\S+)/.exec(beginning)?.[1]?.toLowerCase();
  const declared = /^\s*<\?xml[^>]*\sencoding\s*=\s*["']([\w.:-]+)/.exec(beginning)?.[1];
  for (const label of [page && (asian[page] ?? page.replace(/^ansi_/, 'windows-')), declared, 'windows-1252'])
    if (label && isKnown(label)) return label;
  return 'utf-8';
}

/** Code pages that the encoding standard calls otherwise. From memory. */
const asian: Readonly<Record<string, string>> = {
  ansi_932: 'shift_jis',
  ansi_936: 'gbk',
  ansi_949: 'euc-kr',
  ansi_950: 'big5',
};

function isKnown(label: string): boolean {
  try {
    return new TextDecoder(label) !== undefined;
  } catch {
    return false;
  }
}
