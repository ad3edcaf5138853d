import type { ChapterMaker } from '../book.js';
import { findingTable } from './findings.js';
import { amendmentTable, proof, signoffTable } from './history.js';

/** Owner's edition: what changed, who signed, and how to tell that the book is genuine. */
export const changesChapter: ChapterMaker = (book) => ({
  key: 'changes',
  title: 'Changes, sign-offs and proof',
  template: 'changes',
  data: { ...proof(book), amendments: amendmentTable(book), findings: findingTable(book), signoffs: signoffTable(book) },
});
