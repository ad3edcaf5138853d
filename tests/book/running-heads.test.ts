import { describe, expect, it } from 'vitest';
import { type BookDocument, sheetsOf } from '../../src/book/print/document.js';
import { pageRules } from '../../src/book/print/page-rules.js';
import type { Block, PlannedPage } from '../../src/book/print/paginate.js';
import { headedPages } from '../../src/book/print/running-heads.js';

const DOCUMENT: BookDocument = {
  html: '',
  sheets: sheetsOf('a4'),
  chapters: [
    { key: 'a', title: 'Access panels' },
    { key: 'b', title: 'Index' },
  ],
  pictures: new Map(),
  runningLeft: '',
  runningFoot: '',
  date: '2026-01-02',
  warnings: [],
};
const block = (chapter: string, more: Partial<Block> = {}): Block => ({
  chapter,
  heightMm: 20,
  gapBeforeMm: 2,
  kind: 'solid',
  sheet: 'portrait',
  ...more,
});
const page = (chapter: string, ...blocks: readonly number[]): PlannedPage => ({
  chapter,
  sheet: 'portrait',
  usedMm: 100,
  pieces: blocks.map((one) => ({ block: one, gapMm: 0, heightMm: 20 })),
});
const BLOCKS = [
  block('a', { heading: 'Access panels' }),
  block('a', { heading: 'AP-01: left', tab: 'AP-01' }),
  block('a'),
  block('a', { heading: 'AP-02: right', tab: 'AP-02' }),
  block('a', { heading: 'Where the panels are' }),
  block('a'),
  block('b', { heading: 'Index' }),
  block('b'),
];

describe('what a page says of itself', () => {
  const pages = headedPages(
    [page('a', 0), page('a', 1, 2), page('a', 2, 3), page('a', 4, 5), page('a', 5), page('b', 6), page('b', 7)],
    BLOCKS,
    DOCUMENT,
  );

  it('names the cards on it, the section that goes on, and the chapter where that goes on by itself', () => {
    expect(pages.map(({ head }) => head)).toEqual([
      'Access panels',
      'Access panels  ·  AP-01',
      'Access panels  ·  AP-01, continued, AP-02',
      'Access panels',
      'Access panels  ·  Where the panels are, continued',
      'Index',
      'Index, continued',
    ]);
  });

  it('has the card that begins it as a tab, the later ones farther down', () => {
    expect(pages.map(({ tab }) => tab && [tab.id, tab.share])).toEqual([
      undefined,
      ['AP-01', 0],
      ['AP-01', 0],
      undefined,
      undefined,
      undefined,
      undefined,
    ]);
  });

  it('keeps its inner margin wide, and its tab at the outer edge', () => {
    const rules = pageRules(DOCUMENT, pages);
    expect(rules).toContain(`@page ${pages[1]?.rule}:left { margin: 20mm 22mm 18mm 16mm; @left-top { content: "AP-01"`);
    expect(rules).toContain(`@page ${pages[1]?.rule}:right { margin: 20mm 16mm 18mm 22mm; @right-top { content: "AP-01"`);
    expect(rules).not.toMatch(new RegExp(`@page ${pages[0]?.rule}:left [^}]*@left-top`, 'u'));
  });
});
