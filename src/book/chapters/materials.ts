import type { ChapterMaker } from '../book.js';
import { skinTable } from './skins.js';
import { materialTable } from './structure.js';

/** Owner's edition: what it is made of. */
export const materialsChapter: ChapterMaker = (book) => ({
  key: 'materials',
  title: 'Materials and skin',
  template: 'materials',
  data: { materials: materialTable(book), panels: skinTable(book) },
});
