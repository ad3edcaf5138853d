/**
 * One English a book: what the program itself says is spelt, and called, as in the country of the shop's `english`. American where it says
 * nothing. Words and their twins: from memory.
 */
import { describe, expect, it } from 'vitest';
import type { Assessment } from '../../src/assess.js';
import { spelt } from '../../src/words/index.js';
import { smallAssessment } from '../book/small-store.js';
import { judged } from '../demo/store.js';
import { readMarkup } from '../security/markup.js';
import { bookPage, labelPage } from '../security/pages.js';

const BRITISH =
  /\b(?:mains|tyres?|kerb|colou?red|colours?|centres?|centred|earth (?:stud|bond)s?(?! test)|earthed|litres?|metres|licence|torch|spanner)\b/giu;
const AMERICAN = /\b(?:tires?|curb|colors?|center|centers|centered|ground (?:stud|bond)s?|liters?|meters|flashlight)\b/giu;

/** The index has both, for whoever looks a word up. */
const TWINS = /load center|by color|tires, tyres, tire pressure|grounds, earths/gu;

const reading = (assessment: Assessment, english: 'us' | 'uk'): Assessment => {
  const { model } = assessment;
  return { ...assessment, model: { ...model, shop: { ...model.shop, english, language: 'en' } } };
};
/** What a reader sees; the records' own keys stand in code. */
const words = (html: string): string => readMarkup(html.replace(/<code>.*?<\/code>/gsu, '')).words;

describe('a book for American readers', () => {
  it('has no British word in the demo coach’s service edition, and no sign as a code', async () => {
    const { html, warnings } = await bookPage(reading(judged('OV-021').assessment, 'us'), 'service');
    const said = words(html);
    expect([...new Set(said.replace(TWINS, '').match(BRITISH) ?? [])]).toEqual([]);
    expect(said).not.toMatch(/U\+[0-9A-F]{4}/u);
    expect(said).toContain('42 Mohm');
    expect(warnings.filter((one) => one.includes('typeface'))).toEqual([]);
  });

  it('has none on its labels', () => {
    expect(words(labelPage(reading(smallAssessment(), 'us')).html).match(BRITISH)).toBeNull();
  });
});

describe('a book for British readers', () => {
  it('has the owner’s edition without an American word', async () => {
    const { html } = await bookPage(reading(smallAssessment(), 'uk'), 'owner');
    expect(words(html).match(AMERICAN)).toBeNull();
  });

  it('says in the service edition’s headings, tables and places what is said there', async () => {
    const { html } = await bookPage(reading(smallAssessment(), 'uk'), 'service');
    const said = words(html);
    expect([...new Set(said.replace(TWINS, '').match(AMERICAN) ?? [])].filter((word) => word !== 'tires')).toEqual(['centered']);
    for (const one of ['Tyres, all', 'Tyre pressure', 'Earths and bonding studs', 'earth studs', 'on the centre line', '(kerb)'])
      expect(said).toContain(one);
  });

  it('has the twin of each word, in small and in large letters', () => {
    const uk = { language: 'en', english: 'uk' } as const;
    expect(spelt(uk, 'Tire pressure: the center line, right (curb) side; Color of the ground stud, 2 ft above the ground')).toBe(
      'Tyre pressure: the centre line, right (kerb) side; Colour of the earth stud, 2 ft above the ground',
    );
    expect(spelt({ language: 'en', english: 'us' }, 'Tire')).toBe('Tire');
    expect(spelt({ language: 'es', english: 'uk' }, 'Tire')).toBe('Tire');
  });
});
