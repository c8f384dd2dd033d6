/** Letters that have no plain letter below their accents, and signs of our own labels. */
const plain: Readonly<Record<string, string>> = {
  ß: 'ss',
  ẞ: 'SS',
  æ: 'ae',
  Æ: 'AE',
  œ: 'oe',
  Œ: 'OE',
  ø: 'o',
  Ø: 'O',
  ł: 'l',
  Ł: 'L',
  đ: 'd',
  Đ: 'D',
  ð: 'd',
  Ð: 'D',
  þ: 'th',
  Þ: 'Th',
  ı: 'i',
  µ: 'u',
  '·': '-',
  '×': 'x',
  '−': '-',
  '–': '-',
  '—': '-',
  '‘': "'",
  '’': "'",
  '“': '"',
  '”': '"',
  '°': 'deg',
};

/** Words in the letters of ASCII (0x20 to 0x7e); `instead` says what stands for a sign that has none like it. */
export function ascii(words: string, instead: (sign: string) => string): string {
  return [...words.normalize('NFC')]
    .map((sign) => {
      if (/^[\x20-\x7e]$/.test(sign)) return sign;
      const bare = plain[sign] ?? sign.normalize('NFKD').replace(/\p{Mark}/gu, '');
      return /^[\x20-\x7e]+$/.test(bare) ? bare : instead(sign);
    })
    .join('');
}
