import { beforeAll, describe, expect, it } from 'vitest';
import { bookDocument } from '../../src/book/document.js';
import type { Drawings } from '../../src/book/drawings.js';
import { EDITIONS } from '../../src/book/input.js';
import { weightFigures } from '../../src/book/labels/weight-figures.js';
import { projectDrawings } from '../../src/book/project-drawings.js';
import { factText } from '../../src/cli/report/facts.js';
import { amps, torque } from '../../src/quantity/format.js';
import { where } from '../../src/query/lookup/index.js';
import { saidByAnswers } from '../support/figures/answers.js';
import { disagreements, type Said, saidInTable } from '../support/figures/facts.js';
import { tablesOfHtml } from '../support/figures/printed-tables.js';
import { judged } from './store.js';

/** Of a pair of things, of one occasion or of one condition: the id alone does not settle them. The rest must have one value an id. */
const NOT_OF_THE_ID_ALONE = new Set([
  ...[
    'Distance',
    'Reach',
    'Page',
    'Load',
    'Margin',
    'Uncertainty',
    'Verdict',
    'Left',
    'Right',
    'As weighed',
    'Predicted',
    'Carries',
    '±',
  ],
  ...['Brought to unladen', 'Unexplained', 'Measured', 'Depth', 'Begins at', 'Shallowest behind it', 'Metal behind'],
]);
/** More is said of the same thing where there is room or leave: what is figures in them is compared, not the words about them. */
const WORDS = new Set(['What', 'Name', 'Kind', 'Joins', 'Inspection', 'Inspections, in order', 'Where', 'Panel']);

const text = (html: string): string =>
  html
    .replace(/<[^>]+>/gu, ' ')
    .replace(/&[a-z#0-9]+;/gu, ' ')
    .replace(/[\s\u00a0]+/gu, ' ')
    .trim();

const LISTS = new Set(['distributionFaces', 'generalArrangement', 'frames', 'weldMap', 'weldSymbols', 'services', 'panels']);
const KEPT = new Set(['swatch', 'mediumName', 'mediumLetter']);
/** No drawing: figures in tables and lists are compared, and drawings take theirs from the same functions. */
const plain = new Proxy(projectDrawings, {
  get: (of, name: keyof Drawings) => (KEPT.has(name) ? of[name] : () => (LISTS.has(name) ? [] : undefined)),
});

describe('one figure, one value, in every edition, on labels, at the prompt', () => {
  const { assessment } = judged('OV-021');
  const { shell, shop } = assessment.model;
  /** `id | head of a column` → each value that any table of any edition gives. */
  const found = new Map<string, Set<string>>();
  const pages: string[] = [];
  const said: Said[] = [];
  const isId = (word: string): boolean => shell.byId.has(word);

  beforeAll(async () => {
    for (const edition of EDITIONS) {
      const input = { assessment, edition, fingerprint: '0'.repeat(64), history: { commits: [] }, drawings: plain };
      const { html } = await bookDocument({ ...input, photoFile: async () => undefined });
      pages.push(text(html.slice(html.indexOf('<body>'))));
      for (const table of tablesOfHtml(html)) said.push(...saidInTable(table, { edition, isId }));
      for (const [, table = ''] of html.matchAll(/<table[^>]*>(.*?)<\/table>/gsu)) readTable(table);
    }
  });

  function readTable(table: string): void {
    const head = /<thead>(.*?)<\/thead>/su.exec(table)?.[1] ?? '';
    const heads = [...head.matchAll(/<th[^>]*>(.*?)<\/th>/gsu)].map(([, one = '']) => text(one));
    for (const [, row = ''] of table.matchAll(/<tr[^>]*>(.*?)<\/tr>/gsu)) {
      const cells = [...row.matchAll(/<t[dh][^>]*>(.*?)<\/t[dh]>/gsu)].map(([, one = '']) => text(one));
      const id = cells[0] ?? '';
      if (cells.length !== heads.length || !shell.byId.has(id)) continue;
      cells.slice(1).forEach((cell, i) => {
        const key = `${id} | ${heads[i + 1]}`;
        found.set(key, (found.get(key) ?? new Set()).add(cell));
      });
    }
  }

  it('no table of any edition gives an id another value than the next', () => {
    const nameOf = (key: string): string => (key.split(' | ')[1] ?? '').replace(/ (?:lb|kg|in|mm|ft in|psi|kPa) \/.*$/u, '');
    const compared = [...found].filter(([key]) => !NOT_OF_THE_ID_ALONE.has(nameOf(key)) && !WORDS.has(nameOf(key)));
    expect(compared.length).toBeGreaterThan(2000);
    expect(compared.filter(([, values]) => values.size > 1).map(([key, values]) => `${key}: ${[...values].join(' ≠ ')}`)).toEqual(
      [],
    );
  });

  it('no pair of things has another figure in the next table, at the prompt or in JSON', () => {
    expect(said.filter(({ of }) => of.includes(' × ')).length).toBeGreaterThan(1000);
    expect(disagreements([...said, ...saidByAnswers(assessment)])).toEqual([]);
  });

  it('gives each place one set of coordinates', () => {
    const places = [...found].filter(([key]) => key.endsWith(' | Where'));
    expect(places.length).toBeGreaterThan(300);
    // `5 ft 8-1/4 in aft, … rail`, alone or behind the place in words; the owner's book has the words alone.
    const several = places.filter(([, cells]) => {
      const taped = [...cells].filter((cell) => / rail/u.test(cell));
      const tapes = new Set(taped.filter((cell) => /^\d/u.test(cell)).map((cell) => cell.slice(0, cell.indexOf(' rail') + 5)));
      const [one = ''] = tapes;
      return tapes.size > 1 || taped.some((cell) => !/^\d/u.test(cell) && !cell.endsWith(one));
    });
    expect(several.map(([key, cells]) => `${key}: ${[...cells].join(' ≠ ')}`)).toEqual([]);
  });

  it('prints torques and ratings as the prompt says them', () => {
    const words = { nm: 0, a: 0 };
    for (const { id, torqueNm } of shell.nodes.filter((node) => node.torqueNm !== undefined).slice(0, 20)) {
      const fact = where(assessment, id)[0]?.facts.find(({ head }) => head === 'torque');
      const said = torque(torqueNm as number, shop.units);
      expect(fact && factText(fact, shop.units)).toBe(said);
      expect(pages.slice(1).every((page) => page.includes(said))).toBe(true);
      words.nm += 1;
    }
    for (const { id, protection } of shell.circuits.filter((circuit) => circuit.protection?.ratingA !== undefined)) {
      const stamped = amps(protection?.ratingA as number);
      expect(Number(stamped.replace(' A', '').replace(',', ''))).toBe(protection?.ratingA);
      expect([id, pages[1]?.includes(`${protection?.kind} ${stamped}`)]).toEqual([id, true]);
      words.a += 1;
    }
    expect(Math.min(words.nm, words.a)).toBeGreaterThan(5);
  });

  it('gives the figures of the weight label in the book as on the label', () => {
    const { label } = assessment.figures.weights;
    for (const [lb, kg] of [
      [label?.uvwLb, label?.uvwKg],
      [label?.occcLb, label?.occcKg],
      [label?.cccLb, label?.cccKg],
    ] as const) {
      const grouped = (value: number | undefined): string => (value ?? 0).toLocaleString('en-US');
      const onLabel = weightFigures(assessment).some(({ value }) => value.includes(`${grouped(kg)} kg (${grouped(lb)} lb)`));
      expect([lb, onLabel, pages[0]?.includes(`${grouped(lb)} lb (${grouped(kg)} kg)`)]).toEqual([lb, true, true]);
    }
  });

  it('does not turn 2.5 N·m into a round one, and stamps 7.5 A as it is stamped', () => {
    expect(torque(2.5, 'both')).toBe('22 in·lb (2.5 N·m)');
    expect(torque(203.4, 'both')).toBe('150 ft·lb (203 N·m)');
    expect([amps(7.5), amps(15)]).toEqual(['7.5 A', '15 A']);
  });
});
