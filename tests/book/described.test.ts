/**
 * The pages of a small book in outline, beside their stored descriptions: a chapter, a table or a column that went or moved is seen. Where
 * it should have, read the difference, then write it anew: `npx vitest run --config .vitest.config.ts tests/book/described.test.ts -u`.
 */
import { describe, expect, it } from 'vitest';
import { EDITIONS } from '../../src/book/input.js';
import { bookPage } from '../security/pages.js';
import { smallAssessment } from './small-store.js';

const PART = /<(?<tag>h[1-4]|table|svg)\b[^>]*>(?<inner>[\s\S]*?)<\/\k<tag>>/gu;

const words = (html: string): string =>
  html
    .replaceAll(/<[^>]*>/gu, ' ')
    .replaceAll(/\s+/gu, ' ')
    .trim();

/** Headings by depth; of a table its head and how many rows; of a drawing its title. */
function outline(html: string): string {
  const body = html.slice(html.indexOf('<body'));
  const lines = [...body.matchAll(PART)].map(({ groups }) => {
    const { tag = '', inner = '' } = groups ?? {};
    if (tag === 'table') {
      const rows = inner.split('<tr').length - 1;
      return `    table of ${rows} rows: ${[...inner.matchAll(/<th\b[^>]*>([\s\S]*?)<\/th>/gu)]
        .map(([, one]) => words(one as string))
        .slice(0, 12)
        .join(' | ')}`;
    }
    if (tag === 'svg') return `    drawing: ${words(/<title>(.*?)<\/title>/su.exec(inner)?.[1] ?? '')}`;
    return `${'  '.repeat(Number(tag.slice(1)) - 1)}${words(inner)}`;
  });
  return `${lines.join('\n')}\n`;
}

describe('a book in outline', () => {
  it.each(EDITIONS)('of the small store is as described: %s', async (edition) => {
    const { html } = await bookPage(smallAssessment(), edition);
    await expect(outline(html)).toMatchFileSnapshot(`described/${edition}.txt`);
  });
});
