// A TrueType font without what only a screen of few pixels or a font editor reads. Letters, their outlines, widths, kerning and
// shaping stay as they are; what goes is the programs that fit outlines to pixels, the names of the glyphs, and what says
// again, for older readers, how far letters stand apart. A PDF page needs none of it.

/** Programs for pixels, times of the font editor, and the older table of kerning where the newer one stands. */
const left = new Set(['cvt ', 'fpgm', 'prep', 'gasp', 'FFTM', 'kern']);

/** Flags of a part of a compound glyph, as the OpenType specification (table `glyf`) names them. */
const wordArguments = 0x1;
const oneScale = 0x8;
const moreParts = 0x20;
const twoScales = 0x40;
const fourScales = 0x80;
const instructions = 0x100;

/** Bytes of the tables by their name. */
function tablesOf(font) {
  const tables = new Map();
  for (let at = 12; at < 12 + 16 * font.readUInt16BE(4); at += 16) {
    const offset = font.readUInt32BE(at + 8);
    tables.set(font.toString('latin1', at, at + 4), font.subarray(offset, offset + font.readUInt32BE(at + 12)));
  }
  return tables;
}

/** A glyph without its program. */
function leanGlyph(glyph) {
  if (glyph.length === 0) return glyph;
  const contours = glyph.readInt16BE(0);
  if (contours >= 0) {
    const at = 10 + 2 * contours;
    return Buffer.concat([glyph.subarray(0, at), Buffer.alloc(2), glyph.subarray(at + 2 + glyph.readUInt16BE(at))]);
  }
  const lean = Buffer.from(glyph);
  for (let at = 10; ; ) {
    const flags = lean.readUInt16BE(at);
    lean.writeUInt16BE(flags & ~instructions, at);
    at += 4 + (flags & wordArguments ? 4 : 2);
    at += flags & oneScale ? 2 : flags & twoScales ? 4 : flags & fourScales ? 8 : 0;
    if (!(flags & moreParts)) return lean.subarray(0, at);
  }
}

/** Puts the tables `glyf` and `loca` anew; the latter is in its long form, as `head` says from now on. */
function leanGlyphs(tables) {
  const [loca, glyf, head] = ['loca', 'glyf', 'head'].map((name) => tables.get(name));
  const long = head.readInt16BE(50) === 1;
  const place = (at) => (long ? loca.readUInt32BE(4 * at) : 2 * loca.readUInt16BE(2 * at));
  const count = tables.get('maxp').readUInt16BE(4);
  const places = Buffer.alloc(4 * (count + 1));
  const glyphs = [];
  let length = 0;
  for (let at = 0; at < count; at++) {
    const glyph = padded(leanGlyph(glyf.subarray(place(at), place(at + 1))));
    glyphs.push(glyph);
    length += glyph.length;
    places.writeUInt32BE(length, 4 * (at + 1));
  }
  tables.set('glyf', Buffer.concat(glyphs)).set('loca', places);
  const newHead = Buffer.from(head);
  newHead.writeInt16BE(1, 50);
  tables.set('head', newHead);
}

/** Tables and glyphs begin at multiples of four bytes. */
const padded = (bytes) => Buffer.concat([bytes, Buffer.alloc(-bytes.length & 3)]);

function checksum(bytes) {
  let sum = 0;
  for (let at = 0; at < bytes.length; at += 4) sum = (sum + bytes.readUInt32BE(at)) >>> 0;
  return sum;
}

/** The font with less in it. */
export function leanFont(font) {
  const tables = tablesOf(font);
  const kerned = tables.has('GPOS');
  for (const name of left) if (name !== 'kern' || kerned) tables.delete(name);
  leanGlyphs(tables);
  // version 3: the head of the table alone, no names of glyphs
  const post = Buffer.from(tables.get('post').subarray(0, 32));
  post.writeUInt32BE(0x00030000, 0);
  tables.set('post', post);
  // the sum of the whole file is taken without its own field
  tables.get('head').writeUInt32BE(0, 8);

  const names = [...tables.keys()].sort();
  const steps = Math.floor(Math.log2(names.length));
  const directory = Buffer.alloc(12 + 16 * names.length);
  font.copy(directory, 0, 0, 4);
  directory.writeUInt16BE(names.length, 4);
  directory.writeUInt16BE(16 << steps, 6);
  directory.writeUInt16BE(steps, 8);
  directory.writeUInt16BE(16 * names.length - (16 << steps), 10);
  let offset = directory.length;
  const bodies = names.map((name, at) => {
    const bytes = tables.get(name);
    const body = padded(bytes);
    directory.write(name, 12 + 16 * at, 'latin1');
    directory.writeUInt32BE(checksum(body), 16 + 16 * at);
    directory.writeUInt32BE(offset, 20 + 16 * at);
    directory.writeUInt32BE(bytes.length, 24 + 16 * at);
    offset += body.length;
    return body;
  });
  const whole = Buffer.concat([directory, ...bodies]);
  const head = directory.readUInt32BE(20 + 16 * names.indexOf('head'));
  // as the specification of the table `head` wants it
  whole.writeUInt32BE((0xb1b0afba - checksum(whole)) >>> 0, head + 8);
  return whole;
}
