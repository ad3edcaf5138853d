/**
 * Whatever is typed into a record, the page that goes to the browser holds the elements, attributes, links and styles that we wrote,
 * and shows what was typed as the letters that were typed.
 */
import { describe, expect, it } from 'vitest';
import { type Assessment, assess } from '../../src/assess.js';
import { EDITIONS } from '../../src/book/input.js';
import type { BookDocument } from '../../src/book/print/document.js';
import { pageRules } from '../../src/book/print/page-rules.js';
import { HISTORY } from '../book/small-store.js';
import { loadOne } from '../support/store.js';
import { hostileStore } from './hostile-store.js';
import { foreign, readMarkup } from './markup.js';
import { bookPage, labelPage } from './pages.js';
import { PAYLOADS } from './payloads.js';

const assessmentOf = (files: Readonly<Record<string, string>>): Assessment => {
  const { model, findings } = loadOne(files);
  return assess(model, findings);
};

const pagesOf = async (assessment: Assessment, history = HISTORY) => [
  ...(await Promise.all(EDITIONS.map((edition) => bookPage(assessment, edition, history)))),
  labelPage(assessment),
];

const historyOf = (words: string): typeof HISTORY => ({
  ...HISTORY,
  tag: words,
  commits: HISTORY.commits.map((commit) => ({ ...commit, author: words, message: words })),
});

/** As a reader sees it. */
const shown = (html: string): string =>
  html
    .replace(/&#x([\da-f]+);/giu, (_, code) => String.fromCodePoint(Number.parseInt(code, 16)))
    .replace(/&#(\d+);/gu, (_, code) => String.fromCodePoint(Number(code)))
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&amp;', '&');

const plain = 'words';
const usualPages = pagesOf(assessmentOf(hostileStore(plain).files));

/** The rules of running heads and feet with their strings taken out: no record may write a rule. */
function outsideStrings(page: BookDocument, said: string): string {
  const named = { ...page, runningFoot: said, chapters: [{ key: 'equipment', title: said, pageWords: said }] };
  const rules = pageRules(named, [
    { chapter: 'equipment', sheet: 'portrait', rule: 'p1', head: said, tab: { id: said, share: 0.5 }, pieces: [] },
  ] as never);
  expect(rules).not.toMatch(/<|>/u);
  return rules.replace(/"(?:[^"\\\n]|\\[\da-f]+ )*"/giu, '""');
}

describe('every field of text of every record', () => {
  it('is found by its schema, is taken, and most stand in the book', async () => {
    const { files, marks } = hostileStore(plain);
    const { findings, store } = loadOne(files);
    const form = /^format\.(?!unknown-reference|missing-file|missing-key)/u;
    expect([...store.findings, ...findings].filter(({ rule }) => form.test(rule)).map(({ message }) => message)).toEqual([]);
    const book = (await bookPage(assessmentOf(files), 'shop')).html;
    const standing = [...marks].filter(([, mark]) => book.includes(mark)).map(([field]) => field);
    expect(marks.size).toBeGreaterThan(150);
    expect(standing.length).toBeGreaterThan(80);
    for (const field of ['shop.shop.name', 'shell.customer.name', 'weld.inspections.reason', 'circuit.colour', 'photo.caption'])
      expect(marks.has(field), field).toBe(true);
  });

  it.each(PAYLOADS)('may hold %s: the pages hold our markup only, and show what was typed', async (_what, words, isShown) => {
    const pages = await pagesOf(assessmentOf(hostileStore(words).files), historyOf(words));
    const usual = await usualPages;
    for (const [at, page] of pages.entries()) {
      const markup = readMarkup(page.html);
      expect(foreign(markup)).toEqual([]);
      expect(markup.tags.filter(({ name }) => name === 'script')).toEqual([]);
      expect(markup.styles).toEqual(readMarkup(usual[at]?.html as string).styles);
      expect(outsideStrings(page, words)).toBe(outsideStrings(usual[at] as BookDocument, plain));
    }
    const said = shown(readMarkup(pages[2]?.html as string).words).replace(/\s+/gu, ' ');
    if (isShown === 'as typed') expect(said.split(words.replace(/\s+/gu, ' ')).length).toBeGreaterThan(60);
  });

  it.each(['__proto__', 'constructor', 'toString', 'hasOwnProperty', 'valueOf'])(
    'may be the word %s, which stands for nothing',
    async (word) => {
      for (const { html } of await pagesOf(assessmentOf(hostileStore(word, true).files))) {
        const markup = readMarkup(html);
        expect(foreign(markup)).toEqual([]);
        expect(markup.words).not.toMatch(/\[object |function |native code|=&gt;|undefined|NaN/u);
      }
    },
  );
});
