import fc from 'fast-check';
import { AstUtils } from 'langium';
import { expect, it } from 'vitest';
import { openBook, type TestBook } from '../../harness/book.ts';
import { told } from './where.ts';

const names = ['a.layup', 'b.layup', 'c.layup'];

/** Texts that speak of one another in every way there is; any of them may stand in any file. */
const texts = [
  '',
  'fabric cloth {\n  fibre e_glass\n}\ntool mould {\n}\n',
  'fabric csm_300 like stock {\n}\nfabric cloth like csm_300 {\n}\n',
  'fibre e_glass {\n}\n',
  'recipe one {\n  let l = 1 mm\n  stack from tool mould {\n    ply p cloth, wrap onto p by l\n    ply q csm_300\n  }\n  process infusion {\n    feed f cloth\n  }\n  size s {\n  }\n}\n',
  'recipe two like one {\n  without q\n  change p, darts 2\n  process infusion like one {\n    open f\n  }\n}\n',
  'recipe three like two {\n  let l = 2 mm\n  without p\n}\nrecord three s 2026-05-14 {\n  lot cloth\n}\n',
  'recipe one like two {\n  without q\n}\n',
  'recipe one {\n  stack {\n    ply q cloth at\n    ply ',
  'tool mould {\n',
];

function links(book: TestBook): Record<string, unknown> {
  return Object.fromEntries(
    names.map((name) => {
      const root = book.document(name).parseResult.value;
      const found = [...AstUtils.streamAst(root)].flatMap((node) =>
        [...AstUtils.streamReferences(node)].map(({ reference }) => [
          reference.$refText,
          'ref' in reference ? told(reference.ref) : undefined,
        ]),
      );
      return [name, found];
    }),
  );
}

it('after any edits, in any order, every name means what it means in a book opened afresh', async () => {
  const edit = fc.record({ file: fc.constantFrom(...names), text: fc.constantFrom(...texts), gone: fc.boolean() });
  const open = fc.subarray(names);
  await fc.assert(
    fc.asyncProperty(fc.array(edit, { minLength: 1, maxLength: 12 }), open, async (edits, opened) => {
      const files = Object.fromEntries(names.map((name) => [name, '']));
      const book = await openBook(files, { open: opened });
      for (const { file, text, gone } of edits) {
        if (gone && !opened.includes(file)) await book.remove(file);
        await book.edit(file, text);
        files[file] = text;
      }
      const fresh = await openBook(files);
      expect(links(book)).toEqual(links(fresh));
      book.dispose();
      fresh.dispose();
    }),
    { numRuns: 60 },
  );
}, 60_000);
