/**
 * The owner's book in Spanish, held beside the same book in English: what the program says is said in Spanish, what the shop typed stays as
 * it was typed, and no figure and no id moves.
 */
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Assessment } from '../../src/assess.js';
import { forEdition } from '../../src/book/editions.js';
import { EDITIONS } from '../../src/book/input.js';
import { WORDS } from '../../src/words/index.js';
import type { Sentence } from '../../src/words/sentence.js';
import { DEMO, judged } from '../demo/store.js';
import { bookPage, labelPage } from '../security/pages.js';
import { smallAssessment } from './small-store.js';

const speaking = (assessment: Assessment, language: 'en' | 'es'): Assessment => ({
  ...assessment,
  model: { ...assessment.model, shop: { ...assessment.model.shop, language } },
});

/** Every piece of text that a reader or a screen reader meets, in order; entities as signs. */
function textsOf(html: string): readonly string[] {
  const body = html.slice(Math.max(0, html.indexOf('<body'))).replaceAll(/<style[\s\S]*?<\/style>/gu, '');
  const pieces = [...body.matchAll(/>([^<]+)<|(?:alt|aria-label)="([^"]*)"/gu)].map(([, text, label]) => text ?? label ?? '');
  return pieces
    .map((one) => one.replaceAll('&#x27;', "'").replaceAll('&amp;', '&').replaceAll(/\s+/gu, ' ').trim())
    .filter(Boolean);
}

const ALL: readonly Sentence[] = Object.values(WORDS);

/** English of the catalogue that is other in Spanish; what fills a blank is left open. */
const ENGLISH = ALL.flatMap(({ us, uk = us, es }) =>
  [...new Set([us, uk])].filter((one) => one !== es && /[a-z]{5}/u.test(one.replaceAll(/\{\w+\}/gu, ''))),
);
const PLAIN = new Set(ENGLISH.filter((one) => !one.includes('{')));
const FILLED = ENGLISH.filter((one) => one.includes('{')).map(
  (one) => new RegExp(`^${one.replaceAll(/[.*+?^$()|[\]\\]/gu, '\\$&').replaceAll(/\{\w+\}/gu, '.+')}$`, 'u'),
);
const isEnglish = (text: string): boolean => PLAIN.has(text) || FILLED.some((one) => one.test(text));

/** Spelled alike in both, and the tag of the history. */
const ALIKE = new Set(['Panel', 'Color', 'panel', 'T-1/closed']);

/** Everything that the shop typed, as it stands in the files. */
const TYPED = ['shop.yaml', 'library', 'shells/OV-021']
  .flatMap((one) => {
    const path = join(DEMO, one);
    return statSync(path).isFile()
      ? [path]
      : readdirSync(path, { recursive: true, encoding: 'utf8' })
          .filter((file) => file.endsWith('.yaml'))
          .map((file) => join(path, file));
  })
  .map((file) => readFileSync(file, 'utf8'))
  .join('\n')
  .replaceAll(/\s+/gu, ' ');

/** Whether every part of a text was typed: names stand one after another in lists. */
const isTyped = (text: string): boolean =>
  TYPED.includes(text) ||
  text
    .split(/[,;:·()]|\bat\b|\d\. /u)
    .map((part) => part.trim())
    .every((part) => !/\p{Ll}{3}/u.test(part) || TYPED.includes(part));

describe('the owner’s book in Spanish', () => {
  let en: readonly string[];
  let es: readonly string[];
  let page: string;
  beforeAll(async () => {
    const { assessment } = judged('OV-021');
    const english = await bookPage(speaking(assessment, 'en'), 'owner');
    page = (await bookPage(speaking(assessment, 'es'), 'owner')).html;
    [en, es] = [textsOf(english.html), textsOf(page)];
  });

  it('says that it is Spanish', () => expect(page).toMatch(/<html lang="es">/u));

  it('has no English sentence of the catalogue', () => {
    const left = [...new Set(es)].filter((one) => !isTyped(one) && isEnglish(one));
    expect(left).toEqual([]);
  });

  it('leaves nothing as it is in English but what the shop typed, ids and figures', () => {
    const both = new Set(en);
    const same = [...new Set(es.filter((one) => both.has(one) && /\p{Ll}{4}/u.test(one)))];
    expect(same.length).toBeGreaterThan(100);
    expect(same.filter((one) => !isTyped(one.replace(/^\d+ /u, '')) && !ALIKE.has(one))).toEqual([]);
  });

  it('moves no figure and no id', () => {
    const figures = (texts: readonly string[]): readonly string[] =>
      texts
        .flatMap((one) => one.match(/(?<![\p{L}\d])[A-Z]{2,}[A-Z0-9/.-]*\d[A-Z0-9/.-]*|\d[\d,./-]*\d|\d/gu) ?? [])
        .map((one) => one.replace(/[.,]$/u, ''))
        .sort();
    expect(figures(es)).toEqual(figures(en));
  });

  it('is the owner’s alone: technicians and the shop read English', () => {
    const spanish = speaking(smallAssessment(), 'es');
    expect(EDITIONS.map((edition) => forEdition(spanish, edition).model.shop.language)).toEqual(['es', 'en', 'en']);
  });

  it('has labels and the placard for the cab in Spanish too', () => {
    // The sheet of the weight label is for whoever certifies the vehicle.
    const { html } = labelPage(speaking(judged('OV-021').assessment, 'es'));
    const sheets = html.replace(/<div class="sheet how break" lang="en">[\s\S]*?<\/footer>\s*<\/div>/u, '');
    const spoken = [...sheets.matchAll(/<div [^>]*lang="es"[^>]*>[\s\S]*?<\/div><\/div>/gu)];
    expect(spoken.length).toBeGreaterThan(30);
    const texts = spoken.flatMap(([one]) => textsOf(one));
    expect(texts.filter((one) => !isTyped(one) && isEnglish(one))).toEqual([]);
    expect(texts.some((one) => one.startsWith('parte inferior · '))).toBe(true);
  });
});
