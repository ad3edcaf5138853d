import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { readerOf, say, WORDS, type WordKey } from '../../src/words/index.js';
import type { Sentence } from '../../src/words/sentence.js';

const ALL = Object.entries(WORDS) as readonly (readonly [WordKey, Sentence])[];
const blanks = (text: string): readonly string[] => [...text.matchAll(/\{(\w+)\}/gu)].map((match) => match[1] as string).sort();

/** Figures as they are written: 1,500 is no other in another language. */
const figures = (text: string): readonly string[] =>
  [...text.replaceAll(/\{\w+\}/gu, '').matchAll(/\d[\d.,]*\d|\d/gu)].map(([one]) => one).sort();

/** Keys that are put together from what a record says. */
const MADE = /^(?:hazard|pocket\.view)\./u;

describe('the catalogue of sentences', () => {
  it.each(ALL)('%s has the same blanks and the same end in every language', (_key, { us, uk = us, es }) => {
    for (const other of [uk, es]) {
      expect(blanks(other)).toEqual(blanks(us));
      expect(/[.:,]?$/u.exec(other)?.[0]).toBe(/[.:,]?$/u.exec(us)?.[0]);
      expect(figures(other)).toEqual(figures(us));
    }
  });

  it('has every sentence that a template asks for, and none that nobody says', () => {
    const root = fileURLToPath(new URL('../../', import.meta.url));
    const texts = (folder: string, end: string) =>
      readdirSync(path.join(root, folder), { recursive: true, encoding: 'utf8' })
        .filter((file) => file.endsWith(end) && !file.startsWith('words'))
        .map((file) => readFileSync(path.join(root, folder, file), 'utf8'))
        .join('\n');
    const asked = [...texts('templates', '.hbs').matchAll(/\{\{say "([^"]+)"/gu)].map((match) => match[1] as string);
    expect(asked.length).toBeGreaterThan(30);
    expect(asked.filter((key) => !(key in WORDS))).toEqual([]);
    const source = texts('src', '.ts');
    const madeUp = (key: string): boolean => source.includes(`\`${key.slice(0, key.lastIndexOf('.') + 1)}\${`);
    const unsaid = ALL.filter(([key]) => !asked.includes(key) && !source.includes(`'${key}'`) && !madeUp(key) && !MADE.test(key));
    expect(unsaid.map(([key]) => key)).toEqual([]);
  });

  it('has each key in one list only: none hides another', () => {
    const folder = fileURLToPath(new URL('../../src/words/', import.meta.url));
    const keys = readdirSync(folder)
      .filter((file) => file !== 'spanish.ts')
      .flatMap((file) =>
        [...readFileSync(path.join(folder, file), 'utf8').matchAll(/^ {2}'([^']+\.[^']+)': \{/gmu)].map(
          (match) => match[1] as string,
        ),
      );
    expect(keys.length).toBeGreaterThanOrEqual(ALL.length);
    expect(keys.filter((key, at) => keys.indexOf(key) !== at)).toEqual([]);
  });

  it('speaks to each reader in their own words', () => {
    expect(say(readerOf({ english: 'us' }), 'care.tires')).toMatch(/^Tire /u);
    expect(say(readerOf({ english: 'uk' }), 'care.tires')).toMatch(/^Tyre /u);
    expect(say(readerOf({ language: 'es' }), 'hazard.ac.volts', { volts: 120 })).toBe('120 V CA');
    expect(say(readerOf({}), 'hazard.ac.volts', { volts: 120 })).toBe('120 V AC');
  });
});
