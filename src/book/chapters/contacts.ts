import { whoAnswers } from '../answers/contacts.js';
import type { ChapterMaker } from '../book.js';

/** Owner's edition: who answers for what. */
export const contactsChapter: ChapterMaker = (book) => {
  return {
    key: 'contacts',
    title: 'Who to ask',
    template: 'contacts',
    data: whoAnswers(book),
  };
};
