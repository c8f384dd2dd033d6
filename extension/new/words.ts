/** Words that new files are written with; the editor puts those of the reader's language in their place. */
export const words = {
  written:
    'Written from a few answers: a start, to be changed line by line. The mould and the stock materials are to be',
  writtenOn: 'replaced by your own, with the values of their data sheets.',
  mould: 'Flat mould for: {title}',
  peroxide: 'Styrene: extraction on, vapour filter, no flame. Peroxide burns eyes: goggles, and water within reach.',
  accelerator: 'Never let peroxide and accelerator meet outside the resin.',
  epoxy: 'Epoxy sensitises: nitrile gloves, sleeves, air.',
  prepreg: 'Epoxy sensitises, prepreg too: nitrile gloves.',
  carbonDust: 'Carbon dust conducts: away from switchgear; extraction, mask.',
  glassDust: 'Glass dust: extraction, mask, sleeves; wet if it can be.',
  rollOut: 'Roll out from the middle.',
  weighDown: 'Weigh the core down all over.',
  noBridging: 'No bridging at the edge, mesh nowhere over the tape.',
  shop: 'What holds for the whole workshop. What stands here is a start: put in your own figures.',
  elevation: 'sets the air pressure that pushes the resin',
  scale: 'the step of the balance; the smallest batch follows from it',
  materials:
    'Only what differs from the stock library, or is not in it: above all your own prices, and the values of your data sheets.',
  price: 'unknown as yet; put in what your roll cost, such as {price}',
  tools: 'Your moulds, tables and plates.',
  table: 'Flat table, laminated top',
};

export type Words = typeof words;
