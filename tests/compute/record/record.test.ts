import { describe, expect, it } from 'vitest';
import { eventsOf, lateEntries } from '../../../src/compute/record/late-entries.js';
import { repeats } from '../../../src/compute/record/repeats.js';
import { sameLook } from '../../../src/compute/record/same-look.js';
import type { Elsewhere } from '../../../src/model/elsewhere.js';
import { daysBetween } from '../../../src/quantity/day.js';
import type { Shell } from '../../../src/records/index.js';
import { buildModel, record } from '../../support/build.js';
import { levelPanel, node, run } from '../../support/services.js';
import { clamp, opening, weld } from '../../support/structure.js';

describe('what happened on a day', () => {
  const [a, b] = [node('A', [0, 0, 0]), node('B', [9, 0, 0])];
  const dated = <T extends object>(one: T, date: string): T & { date: string } => ({ ...one, date });
  const { shell } = buildModel({
    welds: [dated(weld('W', [['A', 'B']]), '2026-01-01'), weld('W-none', [['A', 'B']])],
    openings: [dated(opening('SO'), '2026-01-02')],
    clamps: [dated(clamp('UB', []), '2026-01-03')],
    runs: [dated(run('R', a, b), '2026-01-04')],
    tickets: [dated(record('T-5'), '2026-01-05')] as unknown as Shell['tickets'],
    tests: [{ ...record('TS'), testKind: 'rain', of: [], date: '2026-01-06' }],
    panels: [
      { ...levelPanel('P', [0, 0, 0], [9, 9]), date: '2026-01-09', fixing: { method: 'bonded', applied: '2026-01-07' } },
      dated(levelPanel('P-2', [0, 0, 0], [9, 9]), '2026-01-08'),
      { ...levelPanel('P-none', [0, 0, 0], [9, 9]), fixing: { method: 'screws' } },
    ],
    findings: [{ ...record('NC'), raised: '2026-01-10', of: [], rules: [], description: 'dent', tellOwner: false }],
    photos: [
      { ...record('F'), file: 'f.jpg', of: [], taken: '2026-01-11' },
      { ...record('F-none'), file: 'g.jpg', of: [], date: '2026-05-05' },
    ],
    amendments: [{ ...record('AM'), date: '2026-01-12', by: 'A1', reason: 'x', changes: [] }],
  });

  it('is by each record’s own word for it, and of no record without one', () => {
    expect(eventsOf(shell).map(({ record: { id }, event }) => `${id} ${event}`)).toEqual([
      'W 2026-01-01',
      'SO 2026-01-02',
      'UB 2026-01-03',
      'R 2026-01-04',
      'T-5 2026-01-05',
      'TS 2026-01-06',
      'P 2026-01-07',
      'P-2 2026-01-08',
      'NC 2026-01-10',
      'F 2026-01-11',
      'AM 2026-01-12',
    ]);
  });

  it('is late where the first commit came more days after', () => {
    const entered = new Map(['W', 'SO', 'P', 'NC', 'F'].map((id) => [id, '2026-01-11T23:00:00-08:00']));
    const late = (most: number) => lateEntries(shell, entered, most).map(({ record: { id }, days }) => `${id} ${days}`);
    expect(late(3)).toEqual(['W 10', 'SO 9', 'P 4']);
    expect(late(9)).toEqual(['W 10']);
    expect(lateEntries(shell, entered, 9)[0]).toMatchObject({ event: '2026-01-01', entered: '2026-01-11' });
    // Across a leap day and a year's end; the calendar, not the clock
    expect(daysBetween('2028-02-28T23:59:00Z', '2028-03-01T00:00:00Z')).toBe(2);
    expect(daysBetween('2027-01-01', '2026-12-30')).toBe(-2);
  });
});

describe('two pictures', () => {
  const look = '02'.repeat(128);
  it('of different sizes, or nearly blank, are not of one shot', () => {
    expect(sameLook(look, look.slice(1))).toBe(false);
    expect(sameLook(look, `${look}0`)).toBe(false);
    const edges = (count: number): string => '0'.repeat(count) + '1'.repeat(256 - count);
    expect(sameLook(edges(24), edges(24))).toBe(true);
    expect(sameLook(edges(23), edges(23))).toBe(false);
  });
});

describe('records that repeat those of an earlier shell', () => {
  type Typed = Readonly<Record<string, unknown>>;
  type List = 'tests' | 'tickets' | 'openings' | 'panels' | 'welds' | 'members';
  const FILE = { tickets: 'weights', tests: 'tests', openings: 'openings', panels: 'panels', welds: 'welds', members: 'members' };
  const asked: unknown[] = [];
  /** `own` here, `others` in the shell OV-0; what is told, and how many of each. */
  function told(list: List, own: readonly Typed[], others: readonly Typed[], earlier = true): readonly string[] {
    const records = own.map((typed, i) => ({ ...record(String(typed.id ?? i)), typed }));
    const elsewhere: Elsewhere = {
      records: (of, words, least) => {
        asked.push([of, words, least]);
        return of === FILE[list] ? others.map((typed, i) => ({ shell: 'OV-0', id: String(typed.id ?? i), typed })) : [];
      },
      withVin: () => [],
      beganBefore: () => !earlier,
    };
    const { shell } = buildModel({ [list]: records } as unknown as Parameters<typeof buildModel>[0]);
    return repeats(shell, elsewhere).map(({ list: of, shell: from, pairs }) => `${of} ${from} ${pairs.length}`);
  }
  const test = { kind: 'drop', instrument: 'PG', start: '3 psi', end: '3 psi', duration: '15 min', date: '2026-04-02' };
  const ticket = { gross: '9000 kg', readings: { steer: '4000 kg' }, condition: { fuel: 1 }, date: '2026-04-02' };
  const door = { width: '1 m', height: '2 m', measured: { top: '1 m' }, date: '2026-04-02' };

  it.each<[List, Typed, Typed]>([
    ['tests', test, { kind: 'pull', instrument: 'PG-2', start: '4 psi', end: '2 psi', duration: '1 h', date: '2026-04-03' }],
    ['tickets', ticket, { gross: '1 kg', readings: {}, condition: {}, date: '2026-04-03' }],
    ['openings', door, { width: '3 m', height: '3 m', measured: {}, date: '2026-04-03' }],
  ])('%s: one that says the same word for word, in every word', (list, one, changed) => {
    expect(told(list, [one], [{ ...one, id: 'other', by: 'F6' }])).toEqual([`${FILE[list]} OV-0 1`]);
    for (const [key, value] of Object.entries(changed)) expect(told(list, [one], [{ ...one, [key]: value }])).toEqual([]);
    expect(told(list, [one], [one], false)).toEqual([]);
    const { date: _, ...undated } = one;
    expect(told(list, [undated], [undated])).toEqual([]);
  });

  it('claim nothing with fewer readings than tell two honest ones apart', () => {
    const { duration: _, ...short } = test;
    expect(told('tests', [short], [short])).toEqual([]);
    const { condition: _c, ...bare } = ticket;
    expect(told('tickets', [bare], [bare])).toEqual([]);
    const { measured: _m, ...unmeasured } = door;
    expect(told('openings', [unmeasured], [unmeasured])).toEqual([]);
  });

  it('panels and welds: three at least, with their ids', () => {
    const many = (count: number, one: Typed, ids = 'X'): readonly Typed[] =>
      Array.from({ length: count }, (_, i) => ({ ...one, id: `${ids}-${i}` }));
    const bonded = { fixing: { lot: 'A' }, bond: { surface: '21 C' }, date: '2026-04-02' };
    const welded = { welder: 'K7', joins: ['A', 'B'], inspections: [], date: '2026-04-02' };
    for (const [list, one] of [
      ['panels', bonded],
      ['welds', welded],
    ] as const) {
      expect(told(list, many(3, one), many(3, one))).toEqual([`${list} OV-0 3`]);
      expect(told(list, many(3, one), many(2, one))).toEqual([]);
      expect(told(list, many(2, one), many(9, one))).toEqual([]);
      expect(told(list, many(3, one), many(3, one, 'Y'))).toEqual([]);
      for (const key of Object.keys(one)) expect(told(list, many(3, one), many(3, { ...one, [key]: 'other' }))).toEqual([]);
    }
  });

  it('members: ten at least, and half of those with a heat', () => {
    const members = (count: number, heat: string | undefined, from = 0): readonly Typed[] =>
      Array.from({ length: count }, (_, i) => ({ id: `M-${from + i}`, ...(heat === undefined ? {} : { heat }) }));
    const same = members(10, 'H-1');
    expect(told('members', same, same)).toEqual(['members OV-0 10']);
    expect(told('members', same.slice(1), same)).toEqual([]);
    expect(told('members', [...same, ...members(10, 'H-2', 10)], same)).toEqual(['members OV-0 10']);
    expect(told('members', [...same, ...members(11, 'H-2', 10)], same)).toEqual([]);
    // What has no heat claims nothing, on either side.
    expect(told('members', [...same, ...members(30, undefined, 10)], [...same, ...members(30, undefined, 10)])).toEqual([
      'members OV-0 10',
    ]);
  });

  it('are looked for only in files that share enough of their words', () => {
    const heats = Array.from({ length: 12 }, (_, i) => ({ id: `M-${i}`, heat: `H-${i}` }));
    asked.length = 0;
    told('members', heats, []);
    // Half of the members, so a quarter of the heats at least
    expect(asked).toEqual([['members', heats.map(({ heat }) => heat), 3]]);
    asked.length = 0;
    told('tests', [test], []);
    expect(asked).toEqual([['tests', ['2026-04-02'], 1]]);
  });
});
