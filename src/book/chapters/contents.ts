import { anchor } from '../../model/anchor.js';
import type { Book, Chapter } from '../book.js';
import { answered } from '../questions.js';
import { sentencesFor } from '../sentences.js';

export interface Heading {
  readonly level: number;
  readonly to: string;
  readonly html: string;
}

/** The contents, made from the headings that the chapters really have: by question first, then by chapter. */
export function contentsPages(book: Book, headings: readonly Heading[]): Chapter {
  const w = sentencesFor(book);
  return {
    key: 'contents',
    title: w('book.contents'),
    template: 'contents',
    data: {
      questions: answered(new Set(headings.map((heading) => heading.to))).map(({ ask, to, besides }) => ({
        ask: w(ask),
        to,
        besides: besides.map((one) => ({ name: w(one.name), to: one.to })),
      })),
      // Owners and technicians look by question and in the index: their list of chapters is short, the owner's on the page of the questions.
      apart: book.edition !== 'owner',
      close: true,
      chapters: chaptersIn(book.edition === 'shop' ? headings : headings.filter(({ level }) => level === 1)),
      shell: anchor(book.assessment.model.shell.id),
    },
  };
}

/** Each chapter with its sections: those stand in one run behind each other, so that the whole book is seen at once. */
function chaptersIn(headings: readonly Heading[]) {
  const chapters: { readonly head: Heading; readonly sections: Heading[] }[] = [];
  for (const one of headings) {
    if (one.level === 1) chapters.push({ head: one, sections: [] });
    else chapters.at(-1)?.sections.push(one);
  }
  return chapters;
}
