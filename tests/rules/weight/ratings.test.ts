import { describe, expect, it } from 'vitest';
import type { Axle } from '../../../src/records/index.js';
import { concentratedLoad } from '../../../src/rules/weight/concentrated-load.js';
import { gcwrBelowGvwr } from '../../../src/rules/weight/gcwr-below-gvwr.js';
import { leftRight } from '../../../src/rules/weight/left-right.js';
import { liftedOver } from '../../../src/rules/weight/lifted-over.js';
import { marginSmall } from '../../../src/rules/weight/margin-small.js';
import { negativeAxle } from '../../../src/rules/weight/negative-axle.js';
import { noRating } from '../../../src/rules/weight/no-rating.js';
import { weightNotVerified } from '../../../src/rules/weight/not-verified.js';
import { overRating } from '../../../src/rules/weight/over-rating.js';
import { ratingImprobable } from '../../../src/rules/weight/rating-improbable.js';
import { reserveSmall } from '../../../src/rules/weight/reserve-small.js';
import { steerShare } from '../../../src/rules/weight/steer-share.js';
import { tyresBelowGawr } from '../../../src/rules/weight/tyres-below-gawr.js';
import { wheelEndOver } from '../../../src/rules/weight/wheel-end-over.js';
import { withinUncertainty } from '../../../src/rules/weight/within-uncertainty.js';
import { worstOver } from '../../../src/rules/weight/worst-over.js';
import {
  axle,
  bareOf,
  bay,
  condition,
  item,
  seat,
  tagCoach,
  tank,
  ticket,
  twoAxles,
  vehicle,
} from '../../compute/weights/support.js';
import { limits, record } from '../../support/build.js';
import { judge, said } from './judge.js';

/** Two axles on 5 m, weighed 5000 and 6000 kg on SC-1 (U 12.9 kg on the front). */
const weighed = (
  front: Partial<Axle> = {},
  shell: Parameters<typeof vehicle>[1] = {},
  chassis: Parameters<typeof vehicle>[0] = {},
  shop: Parameters<typeof vehicle>[2] = {},
) => {
  const [first, second] = twoAxles();
  const axles = [{ ...first!, ...front }, second!];
  return vehicle(
    { axles, gvwrKg: 18000, ...chassis },
    { tickets: [ticket('T-1', { front: 5000, rear: 6000 }, { scale: 'SC-1' })], ...shell },
    shop,
  );
};

describe('weight.over-rating', () => {
  it('passes within every rating', () => expect(judge(overRating, weighed())).toEqual([]));
  it('tells the axle, by how much, in which condition and what limits it', () => {
    const model = weighed({ gawrKg: 5050 }, { tanks: [tank('FRESH', 'water', 200, 0)] });
    expect(said(overRating, model)).toEqual([
      'error front: Axle front carries 5,200 kg (± 13 kg) in `water`, expected at most 5,050 kg for its GAWR: 150 kg over; also in loaded. Move or take off load, or lower the bay limits',
    ]);
  });
  it('tells it in the units of the shop', () => {
    expect(said(overRating, weighed({ gawrKg: 4900 }, {}, {}, { units: 'us' }))[0]).toContain('11,023 lb (± 28 lb)');
  });
  it('tells the whole against its GVWR', () => {
    const model = weighed({}, { bays: [bay('B', 2500, 500)] }, { gvwrKg: 11200 });
    expect(said(overRating, model)).toEqual([expect.stringContaining('error T-1: The vehicle weighs 11,500 kg')]);
  });
  it('counts the shop’s own conditions, and an overload by stated bay limits', () => {
    const aboard = [{ name: 'crate', massKg: 3000, at: [0, 0, 0] as const }];
    expect(
      judge(overRating, weighed({}, { conditions: [{ name: 'fair', condition: condition({ aboard }) }] }))[0]?.message,
    ).toContain('`fair`');
    expect(judge(overRating, weighed({}, { bays: [bay('B', 0, 2500)] }))[0]?.message).toContain('`loaded`');
  });
  it('cannot be loosened by the shop', () => {
    const loose = { limits: { ...limits, axleMargin: -1 } };
    expect(judge(overRating, weighed({ gawrKg: 4900 }, {}, {}, loose))[0]?.severity).toBe('error');
  });
  it('leaves an axle that is lifted to its own rule', () => {
    const steer = { tickets: [ticket('T-1', { steer: 4000, drive: 6500, tag: 4500 })] };
    const model = vehicle({ axles: tagCoach(), gvwrKg: 20000 }, steer);
    expect(judge(overRating, model)).toEqual([]);
    expect(said(liftedOver, model)).toEqual([
      expect.stringMatching(/^note tag: .* in unladen, occupants, water, loaded, waste, .*up only to manoeuvre/u),
    ]);
  });
});

describe('weight.lifted-over', () => {
  const coach = (bays: readonly ReturnType<typeof bay>[]) =>
    vehicle({ axles: tagCoach(), gvwrKg: 20000 }, { bays, tickets: [ticket('T-1', { steer: 4600, drive: 5300, tag: 3500 })] });
  it('is a note where it may be lifted unladen', () => {
    expect(said(liftedOver, coach([bay('B', 7000, 1000)]))).toEqual([
      'note tag: With axle tag up, axle drive is over its rating in loaded, expected it down then: label its switch with the conditions in which it may be lifted',
    ]);
  });
  it('passes where it may always be lifted', () => expect(judge(liftedOver, coach([]))).toEqual([]));
});

describe('weight.within-uncertainty and weight.margin-small', () => {
  it('a margin smaller than its uncertainty is not kept', () => {
    expect(said(withinUncertainty, weighed({ gawrKg: 5010 }))).toEqual([
      'warning front: Axle front has 10 kg left in `unladen`, expected more than its uncertainty of ± 13 kg, most of it from tolerance of scale SC-1; also in occupants, water, loaded, waste: weigh on a finer scale with tanks full or empty, or take off load',
    ]);
    expect(judge(marginSmall, weighed({ gawrKg: 5010 }))).toEqual([]);
  });
  it('the whole against its GVWR', () => {
    expect(said(withinUncertainty, weighed({}, {}, { gvwrKg: 11010 }))[0]).toContain(
      'warning T-1: The vehicle has 10 kg left to its GVWR',
    );
  });
  it('a small margin is a warning, by the shop’s own limit', () => {
    expect(said(marginSmall, weighed({ gawrKg: 5100 }))).toEqual([
      expect.stringContaining('has 100 kg (2.0 %) left in `unladen`, expected at least 3.0 %'),
    ]);
    expect(judge(marginSmall, weighed({ gawrKg: 5100 }, {}, {}, { limits: { ...limits, axleMargin: 0.01 } }))).toEqual([]);
  });
  it('an axle that is over is told once', () => {
    const model = weighed({ gawrKg: 5000.5 }, { tanks: [tank('FRESH', 'water', 200, 0)] });
    expect(judge(overRating, model)).toHaveLength(1);
    expect([...judge(withinUncertainty, model), ...judge(marginSmall, model), ...judge(reserveSmall, model)]).toEqual([]);
  });
});

describe('weight.reserve-small', () => {
  it('notes an axle without reserve for the next trade', () => {
    expect(said(reserveSmall, weighed({ gawrKg: 5400 }))).toEqual([
      expect.stringContaining('has 387 kg left beyond its uncertainty in `unladen`, expected 540 kg (10.0 %) in reserve'),
    ]);
    expect(judge(reserveSmall, weighed({ gawrKg: 5600 }))).toEqual([]);
  });
});

describe('weight.tyres-below-gawr', () => {
  const tyres = (loadIndex: number) => ({ gawrKg: 6622.4, tyres: { count: 2, loadIndex: [loadIndex] } });
  it('two tyres of load index 146 under 14,600 lb', () => {
    // TYR-S7: 6000 kg against 6622.4 kg
    expect(said(tyresBelowGawr, weighed(tyres(146)))).toEqual([
      expect.stringContaining('error front: Tires of axle front carry 6,000 kg together, expected at least its GAWR of 6,622 kg'),
    ]);
  });
  it('passes with tyres that carry it', () => {
    // TYR-S6: four of load index 148 in duals, 12,600 kg, over 23,000 lb.
    const drive = { gawrKg: 10432.6, dual: true, tyres: { count: 4, loadIndex: [152, 148] } };
    expect(judge(tyresBelowGawr, weighed(drive))).toEqual([]);
    expect(judge(tyresBelowGawr, weighed(tyres(150)))).toEqual([]);
  });
});

describe('weight.rating-improbable', () => {
  it('14,600 kg on two tyres: pounds, most likely', () => {
    expect(said(ratingImprobable, weighed({ gawrKg: 14600 }))).toEqual([
      'warning front: `gawr` of axle front is 14,600 kg on 2 tires, expected at most about 11,600 kg: if the label says pounds, type `gawr: 14,600 lb`, which is 6,622 kg',
    ]);
  });
  it('passes what tyres can carry', () => {
    expect(judge(ratingImprobable, weighed())).toEqual([]);
    expect(judge(ratingImprobable, weighed({ gawrKg: 13000, dual: true }))).toEqual([]);
  });
});

describe('weight.no-rating', () => {
  it('warns, and the rest is computed', () => {
    const model = vehicle(
      { axles: [axle('front', 0), twoAxles()[1]!] },
      { tickets: [ticket('T-1', { front: 5000, rear: 12000 })] },
    );
    expect(said(noRating, model)).toEqual([expect.stringContaining('warning front: No rating on record for axle front')]);
    expect(judge(overRating, model)[0]?.ids).toEqual(['rear']);
  });
  it('asks for the GAWR where only tyres are on record', () => {
    const front = axle('front', 0, { tyres: { count: 2, loadIndex: [150] } });
    expect(said(noRating, vehicle({ axles: [front, twoAxles()[1]!] }))[0]).toContain('No GAWR on record for axle front');
  });
});

describe('weight.not-verified', () => {
  const axles = twoAxles();
  it('warns where nothing was weighed, notes a prediction, passes a ticket', () => {
    expect(judge(weightNotVerified, vehicle({ axles }))[0]).toMatchObject({ severity: 'warning' });
    expect(judge(weightNotVerified, vehicle({ axles, bare: bareOf({ front: 3000, rear: 2000 }) }))[0]).toMatchObject({
      severity: 'note',
    });
    expect(judge(weightNotVerified, weighed())).toEqual([]);
    expect(judge(weightNotVerified, vehicle({}))).toEqual([]);
  });
  it('warns of a prediction once the last stage is signed off', () => {
    const signoffs = [{ ...record('S'), stage: 'finished', role: 'inspector', by: 'J2', date: '2026-07-01' }];
    expect(
      judge(weightNotVerified, vehicle({ axles, bare: bareOf({ front: 3000, rear: 2000 }) }, { signoffs }))[0],
    ).toMatchObject({
      severity: 'warning',
    });
  });
  it('says what is missing of a layout that is not determined', () => {
    const three = [...axles, axle('third', 6300)];
    const model = vehicle({ axles: three, bare: bareOf({ front: 3000, rear: 2000, third: 1000 }) });
    expect(said(weightNotVerified, model)[0]).toContain('Add `share:`');
  });
});

describe('weight.negative-axle', () => {
  it('load behind the rear axle that lifts the front', () => {
    const model = weighed({}, { bays: [bay('TAIL', 15000, 3000)] });
    expect(said(negativeAxle, model)[0]).toContain('error front: Axle front would carry −1,000 kg in `loaded`');
  });
  it('passes on the ground, and says nothing of a shell without its chassis', () => {
    expect(judge(negativeAxle, weighed())).toEqual([]);
    expect(judge(negativeAxle, vehicle({ axles: twoAxles() }), [item('A', 500, 9000)])).toEqual([]);
  });
});

describe('weight.wheel-end-over', () => {
  const ends = (leftKg: number, rightKg: number) => ({
    tickets: [
      ticket('T-1', {}, { readings: { front: { totalKg: leftKg + rightKg, leftKg, rightKg }, rear: { totalKg: 6000 } } }),
    ],
  });
  it('one end over half of the axle', () => {
    expect(said(wheelEndOver, weighed({ gawrKg: 5200 }, ends(2700, 2300)))).toEqual([
      expect.stringContaining(
        "error front: The left end of axle front carries 2,700 kg in `unladen`, expected at most half of the axle's 5,200 kg, 2,600 kg",
      ),
    ]);
    expect(judge(overRating, weighed({ gawrKg: 5200 }, ends(2700, 2300)))).toEqual([]);
  });
  it('passes with both within', () => expect(judge(wheelEndOver, weighed({ gawrKg: 5200 }, ends(2550, 2450)))).toEqual([]));
});

describe('weight.left-right', () => {
  const ends = (leftKg: number, rightKg: number) => ({
    tickets: [
      ticket(
        'T-1',
        {},
        {
          readings: {
            front: { totalKg: leftKg + rightKg, leftKg, rightKg },
            rear: { totalKg: 6000, leftKg: 3000, rightKg: 3000 },
          },
        },
      ),
    ],
  });
  it('notes ends more than 5 % apart', () => {
    expect(said(leftRight, weighed({}, ends(2700, 2300)))).toEqual([
      'note front: Axle front carries 2,700 kg left and 2,300 kg right unladen, 8.0 % of its load apart, expected at most 5.0 %: move heavy items to the lighter side',
    ]);
    expect(judge(leftRight, weighed({}, ends(2600, 2400)))).toEqual([]);
  });
});

describe('weight.steer-share', () => {
  it('warns under 20 %', () => {
    const tail = { tickets: [ticket('T-1', { front: 1900, rear: 8100 })] };
    expect(said(steerShare, weighed({}, tail))).toEqual([
      'warning front: Axle front carries 19.0 % of the total in `unladen`, expected at least 20.0 %: move load forward',
    ]);
    expect(judge(steerShare, weighed())).toEqual([]);
  });
});

describe('weight.worst-over', () => {
  // Each stated condition is within, but full waste tanks with full bays are not.
  const shell = { tanks: [tank('GREY', 'grey', 300, 5000)], bays: [bay('B', 5000, 300)], seats: [seat('driver', 0)] };
  it('finds the combination that no named condition shows', () => {
    const model = weighed({}, { ...shell, tickets: [ticket('T-1', { front: 5000, rear: 10600 })] });
    expect(judge(overRating, model)).toEqual([]);
    expect(said(worstOver, model)).toEqual([
      'warning rear: Axle rear would carry 11,200 kg with GREY full, no seats, bays B, expected at most 11,000 kg: lower a bay limit, or tell the owner not to combine these',
    ]);
  });
  it('passes where none overloads', () => expect(judge(worstOver, weighed({}, shell))).toEqual([]));
});

describe('weight.concentrated-load', () => {
  const component = (massKg: number) => ({
    ...record('GEN'),
    name: 'Generator',
    massKg,
    at: [0, 0, 0] as const,
    basis: 'weighed' as const,
  });
  it('notes over 227 kg in one place', () => {
    expect(said(concentratedLoad, weighed({}, { components: [component(240)] }))[0]).toContain(
      'note GEN: Generator (GEN) weighs 240 kg',
    );
    expect(judge(concentratedLoad, weighed({}, { components: [component(227)] }))).toEqual([]);
    const declared = (of: readonly string[]) => [{ ...record('MOUNT-1'), declaredKind: 'mounting', by: 'J. Doe, P.E. 1', of }];
    const mounted = (of: readonly string[]) => weighed({}, { components: [component(240)], declared: declared(of) });
    expect(judge(concentratedLoad, mounted(['GEN']))).toEqual([]);
    expect(judge(concentratedLoad, mounted(['STOVE']))).toHaveLength(1);
    const floor = { ...component(300), sizeMm: [6000, 2400, 18] as const };
    expect(judge(concentratedLoad, weighed({}, { components: [floor] }))).toEqual([]);
  });
});

describe('weight.gcwr-below-gvwr', () => {
  const rated = (gcwrKg: number) => vehicle({ axles: twoAxles(), gvwrKg: 12000, gcwrKg });
  it('a combination rated for less than the vehicle in it', () => {
    expect(said(gcwrBelowGvwr, rated(8000))).toEqual([
      'warning T-1: GCWR 8,000 kg is less than the GVWR, expected at least 12,000 kg: compare both with the incomplete vehicle document',
    ]);
  });
  it('passes the same figure, and more', () => {
    expect([12000, 36000].flatMap((gcwrKg) => judge(gcwrBelowGvwr, rated(gcwrKg)))).toEqual([]);
  });
});
