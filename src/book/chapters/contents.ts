import { anchor } from '../../model/anchor.js';
import type { Book, Chapter } from '../book.js';
import { answered } from '../questions.js';

export interface Heading {
  readonly level: number;
  readonly to: string;
  readonly html: string;
}

/** The contents, made from the headings that the chapters really have: by question first, then by chapter. */
export function contentsOf(book: Book, headings: readonly Heading[]): Chapter {
  return {
    key: 'contents',
    title: 'Contents',
    template: 'contents',
    data: {
      questions: answered(new Set(headings.map((heading) => heading.to))),
      headings: headings.map((one) => ({ ...one, chapter: one.level === 1 })),
      shell: anchor(book.assessment.model.shell.id),
    },
  };
}
