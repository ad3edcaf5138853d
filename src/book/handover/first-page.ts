import { CAUTIONS } from '../../query/release/index.js';
import type { Book, Chapter } from '../book.js';
import type { HandOverFacts } from './facts.js';

/** How far the coach is, what to keep in mind, and what the pages behind it are. */
export const firstPage = (book: Book, { state }: HandOverFacts, pages: readonly Chapter[]): Chapter => ({
  key: 'handover',
  title: 'Hand-over to paint and interior',
  template: 'handover',
  data: {
    shell: book.assessment.model.shell.id,
    name: book.assessment.model.shell.title,
    state,
    cautions: CAUTIONS,
    pages: pages.map(({ key, title }) => ({ to: `c-${key}`, title })),
  },
});
