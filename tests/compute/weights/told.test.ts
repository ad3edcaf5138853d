import { describe, expect, it } from 'vitest';
import { weights } from '../../../src/compute/weights/index.js';
import type { Model } from '../../../src/model/shell.js';
import type { Axle } from '../../../src/records/index.js';
import { axle, bareOf, bay, condition, item, seat, takeOffOf, tank, ticket, vehicle } from './support.js';

type Shell = Partial<Model['shell']>;
type Chassis = Partial<Model['shell']['chassis']>;

/** Two axles of which nothing is on record but their place. */
const plain = [axle('front', 0), axle('rear', 5000)];
const rear = (more: Partial<Axle>): Chassis => ({ axles: [axle('front', 0), axle('rear', 5000, more)] });

// Every sentence that a figure leans on stands beside it, and none that this shell does not call for. Common practice, no source.

describe('what the figures assume', () => {
  const said = (chassis: Chassis = {}, shell: Shell = {}) =>
    weights(vehicle({ axles: plain, ...chassis }, shell), takeOffOf([item('A', 500, 2500)])).assumptions.filter(
      (words) => !words.startsWith('Not recorded what tanks'),
    );
  const always = said();
  /** What is said more than of the plain shell. */
  const more = (chassis: Chassis, shell: Shell = {}) => said(chassis, shell).filter((words) => !always.includes(words));
  const tyres = { count: 2, loadIndex: [152] };

  it('names the tanks whose use is not recorded, and takes the recorded one before any word', () => {
    const at = (use?: 'fresh') =>
      weights(vehicle({ axles: plain }, { tanks: [tank('GREY', 'grey', 100, 2500, use ? { use } : {})] }), takeOffOf());
    expect(at().assumptions.join(' ')).toContain('Not recorded what tanks GREY');
    expect(at().fullWaterKg).toBe(0);
    expect(at('fresh').fullWaterKg).toBeCloseTo(100, 9);
  });
  it('is nothing where there is nothing to compute', () => expect(said({ axles: [] })).toEqual([]));
  it('of a plain shell is what always holds', () => {
    expect(always).toEqual([
      'No bare chassis and no verified ticket: loads are those of the 500 kg on record alone, and are judged by nothing.',
      expect.stringContaining('water is cargo'),
      expect.stringContaining('expanded (k = 2)'),
      expect.stringContaining('not for stability'),
      'Budget: 10 % of each axle’s rating is held in reserve, plus the expanded uncertainty of its load.',
      expect.stringContaining('United States Interstate'),
    ]);
  });
  it.each<[string, Chassis, Shell, readonly string[]]>([
    ['liquid petroleum gas', {}, { tanks: [tank('LP', 'propane', 50, 0)] }, ['full at 80 %']],
    ['another operating fluid', {}, { tanks: [tank('DEF', 'urea', 50, 0)] }, []],
    ['a belted seat', {}, { seats: [seat('S', 0)] }, ['Each belted seat counts 68 kg']],
    ['a seat without a belt', {}, { seats: [seat('S', 0, 0, false)] }, []],
    [
      'an axle that shares',
      rear({ share: { with: 'front', fraction: 0.4 } }),
      {},
      ['Axle rear takes 40 % of the load that it shares with front'],
    ],
    ['an axle that lifts', rear({ lift: true }), {}, ['When rear is up, none of it is on the road']],
    ['a track', rear({ trackMm: 2000 }), {}, ['Left and right']],
    ['tyres with both pressures', rear({ tyres: { ...tyres, inflationPa: 7e5, inflationForIndexPa: 8e5 } }), {}, ['(P/Pref)']],
    ['tyres without their reference pressure', rear({ tyres: { ...tyres, inflationPa: 7e5 } }), {}, ['at their full load index']],
    ['tyres without their pressure', rear({ tyres: { ...tyres, inflationForIndexPa: 8e5 } }), {}, ['at their full load index']],
    [
      'odd tanks',
      {},
      { tanks: [tank('X', 'lemonade', 50, 0), tank('Y', 'beer', 50, 0)] },
      ['Tanks X, Y are empty in every condition'],
    ],
    ['a bay with a limit', {}, { bays: [bay('B1', 0, 100)] }, ['Bay allowances keep']],
    [
      'bays without one',
      {},
      { bays: [bay('B1', 0, 100), bay('B2', 0), bay('B3', 0)] },
      ['Bay allowances keep', 'Bays without a stated limit (B2, B3)'],
    ],
    ['a GCWR', { gcwrKg: 20000 }, {}, ['What the GCWR leaves']],
  ])('says more for %s', (_name, chassis, shell, expected) => {
    expect(more(chassis, shell)).toEqual(expected.map((words) => expect.stringContaining(words)));
  });
  it('says what the conditions start from', () => {
    const bare = bareOf({ front: 3000, rear: 2000 });
    expect(said({ bare })[0]).toBe(
      'Conditions are predicted from the bare chassis (each reading ± 1 %) and 500 kg on record. No ticket is verified.',
    );
    expect(more({ bare: { ...bare, condition: condition({ fuelKnown: false }) } })).toContainEqual(
      expect.stringContaining('does not say how much fuel was in'),
    );
    expect(more({ bare })).not.toContainEqual(expect.stringContaining('how much fuel'));
  });
  it('says from which ticket, what came on since, and that no scale is named', () => {
    const from = (scale: string | undefined, stage: string) => {
      const one = ticket('T-1', { front: 4000, rear: 5000 }, { stage: 'walls', ...(scale === undefined ? {} : { scale }) });
      return weights(vehicle({ axles: plain }, { tickets: [one] }), takeOffOf([item('A', 500, 2500, { stage })])).assumptions[0];
    };
    const start = 'Conditions start from ticket T-1 of 30 Jun 2026, brought to unladen';
    expect(from('SC-1', 'walls')).toBe(`${start}.`);
    expect(from('SC-1', 'finished')).toBe(`${start}, and 500 kg that the records put on since.`);
    expect(from(undefined, 'walls')).toBe(`${start}. It names no scale: 50 kg steps and 0.5 % are taken.`);
  });
});

describe('what could not be computed', () => {
  const rated = [axle('front', 0, { gawrKg: 7000 }), axle('rear', 5000, { gawrKg: 11000 })];
  const bare = bareOf({ front: 3000, rear: 2000 });
  const whole: Chassis = { axles: rated, bare, gvwrKg: 15000 };
  const told = (chassis: Chassis) => weights(vehicle({ ...whole, ...chassis }), takeOffOf()).problems;

  it('is nothing of a shell with everything', () => expect(told({})).toEqual([]));
  it.each<[string, Chassis, readonly string[]]>([
    ['no axles', { axles: [] }, ['No axles are on record']],
    ['no GVWR', { gvwrKg: undefined }, ['No GVWR on record']],
    ['no rating', { axles: plain }, ['No rating on record for axle front, rear: its loads']],
    ['no bare chassis', { bare: undefined }, ['The bare chassis is not on record: nothing']],
    ['a bare chassis without a reading', { bare: bareOf({ front: 3000 }) }, ['has no reading for axle rear: nothing']],
    ['less than it weighs', { gvwrKg: 4999.9 }, ['heavier than its GVWR']],
    ['just what it weighs', { gvwrKg: 5000 }, []],
    ['one support', { axles: rated.slice(0, 1), bare: bareOf({ front: 3000 }) }, ['Only one support']],
  ])('%s', (_name, chassis, expected) => {
    expect(told(chassis)).toEqual(expected.map((words) => expect.stringContaining(words)));
  });
  it('tells no overweight of a vehicle that nothing weighed', () => {
    const heavy = weights(vehicle({ axles: rated, gvwrKg: 100 }), takeOffOf([item('A', 500, 2500)]));
    expect(heavy.problems).toEqual([expect.stringContaining('bare chassis is not on record')]);
  });
});
