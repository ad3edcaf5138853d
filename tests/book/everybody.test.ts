/** The page of an emergency is for whoever stands there: in the language of shop.yaml in every edition, and with every source named. */
import { describe, expect, it } from 'vitest';
import type { Assessment } from '../../src/assess.js';
import { emergencyChapter } from '../../src/book/chapters/emergency.js';
import { editionBook } from '../../src/book/document.js';
import { rendered } from '../../src/book/rendered.js';
import { rescueSources } from '../../src/query/isolate/rescue.js';
import { say } from '../../src/words/index.js';
import { judged } from '../demo/store.js';
import { bookPage } from '../security/pages.js';
import { FINGERPRINT, HISTORY, smallAssessment } from './small-store.js';

const ES = { language: 'es', english: 'us' } as const;
const EN = { language: 'en', english: 'us' } as const;

const inLanguage = (language: 'en' | 'es'): Assessment => {
  const { assessment } = judged('OV-021');
  return { ...assessment, model: { ...assessment.model, shop: { ...assessment.model.shop, language } } };
};
/** The page by itself, of the service edition. */
const page = async (language: 'en' | 'es'): Promise<string> => {
  const book = await editionBook({
    assessment: inLanguage(language),
    edition: 'service',
    fingerprint: FINGERPRINT,
    history: HISTORY,
    photoFile: async () => undefined,
  });
  return rendered(book, emergencyChapter(book)).html;
};
const linked = (markup: string): readonly string[] =>
  [...markup.matchAll(/<a class="ref" href="#[^"]*">([^<]+)<\/a>/gu)].map((match) => match[1] as string);

describe('the emergency page of the service edition', () => {
  it('is Spanish where the shop writes for Spanish readers, with the same ids; the rest stays English', async () => {
    const [spanish, english] = [await page('es'), await page('en')];
    expect(spanish).toContain(say(ES, 'emergency.out'));
    expect(spanish).not.toContain(say(EN, 'emergency.out'));
    expect(/<section [^>]*>/u.exec(spanish)?.[0]).toContain('lang="es"');
    expect(/<section [^>]*>/u.exec(english)?.[0]).not.toContain('lang=');
    // Longer words may set a list elsewhere on the page.
    expect([...linked(spanish)].sort()).toEqual([...linked(english)].sort());
    const small = smallAssessment();
    const shop = { ...small.model.shop, language: 'es' as const };
    const { html } = await bookPage({ ...small, model: { ...small.model, shop } }, 'service');
    expect(html).toContain('<html lang="en">');
    expect(html).toContain('<section class="chapter emergency" data-chapter="emergency" lang="es">');
    expect(html).toContain('Torque, by what it is for');
  });

  it('names every source and shut-off of gas, fuel, AC and batteries', async () => {
    const emergency = await page('en');
    const { shell } = judged('OV-021').assessment.model;
    const sources = rescueSources(shell).map(({ id }) => id);
    expect(sources.length).toBeGreaterThan(10);
    expect(sources.filter((id) => !linked(emergency).includes(id))).toEqual([]);
  });
});
