import type { ReferenceParams, ReferenceResult } from '../protocol/reference.ts';
import { chapterChoices, isReferenceChapter, referenceChapter, referenceIndex } from '../view/reference/chapters.ts';

/** Request `laybook/reference` */
export const answerReference = ({ chapter }: ReferenceParams): ReferenceResult => ({
  markdown: chapter !== undefined && isReferenceChapter(chapter) ? referenceChapter(chapter) : referenceIndex(),
  chapters: chapterChoices(),
});
