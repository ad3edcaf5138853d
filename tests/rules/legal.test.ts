import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { LEGAL_FIGURES } from '../../src/rules/legal.js';
import { fromMemory } from '../support/legal-page.js';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

/** From memory when this was last looked at: it may only go down. */
const MOST_FROM_MEMORY = 23;

/** A law or electrical code as sources, templates and starter files cite it. */
const CITED =
  /\b(?:(?:49|23|24|29) (?:CFR|USC) (?:part )?\d+(?:\.\d+)?|NEC (?:Table |Chapter \d+ Table )?\d+(?:\.\d+)?(?:\([A-Z]\))?|NFPA 58)/gu;

describe('legal figures', () => {
  it('are all listed that the program cites', () => {
    const listed = LEGAL_FIGURES.map(({ citation }) => citation).join('; ');
    const missing = ['src', 'templates'].flatMap(filesUnder).flatMap((file) => {
      const cited = readFileSync(file, 'utf8').match(CITED) ?? [];
      return cited
        .filter((one) => !listed.includes(one.replace('part ', '')))
        .map((one) => `${path.relative(ROOT, file)}: ${one}`);
    });
    expect(missing).toEqual([]);
  });

  it('were compared on a day that has been, but for those from memory, which do not grow in number', () => {
    for (const { compared } of LEGAL_FIGURES) if (compared) expect(compared.day).toMatch(/^20\d\d-\d\d-\d\d$/u);
    expect(fromMemory().length).toBeLessThanOrEqual(MOST_FROM_MEMORY);
  });
});

const filesUnder = (room: string): readonly string[] =>
  readdirSync(path.join(ROOT, room), { recursive: true, encoding: 'utf8' })
    .filter((file) => /\.(?:ts|yaml|hbs)$/u.test(file))
    .map((file) => path.join(ROOT, room, file));
