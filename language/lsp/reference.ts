import type { Connection } from 'vscode-languageserver';
import { type ReferenceParams, type ReferenceResult, referenceRequest } from '../protocol/reference.ts';
import { chapterChoices, isReferenceChapter, referenceChapter, referenceIndex } from '../view/reference/chapters.ts';

/** Request `laybook/reference` */
export function serveReference(connection: Connection): void {
  connection.onRequest(
    referenceRequest,
    ({ chapter }: ReferenceParams): ReferenceResult => ({
      markdown: chapter !== undefined && isReferenceChapter(chapter) ? referenceChapter(chapter) : referenceIndex(),
      chapters: chapterChoices(),
    }),
  );
}
