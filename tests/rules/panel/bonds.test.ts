import { describe, expect, it } from 'vitest';
import { bondFigures } from '../../../src/compute/structure/bonds.js';
import { dewPointK } from '../../../src/compute/structure/dew-point.js';
import type { Bond, Fixing, Panel, Test } from '../../../src/records/index.js';
import { bondDewPoint } from '../../../src/rules/panel/bond-dew-point.js';
import { bondNotVerified } from '../../../src/rules/panel/bond-not-verified.js';
import { bondTime } from '../../../src/rules/panel/bond-time.js';
import { buildModel, record } from '../../support/build.js';
import { judgeStructure } from '../../support/judge-structure.js';
import { flatPanel } from '../../support/structure.js';

const K = 273.15;
const fixing: Fixing = { method: 'bonded', lot: 'B-1', expires: '2026-12-31', applied: '2026-03-02' };
const bond: Bond = {
  surfaceK: 20 + K,
  airK: 20 + K,
  humidity: 0.5,
  openTimeS: 1320,
  openTimeLimitS: 1800,
  cureS: 86_400,
  coupon: 'TS-1',
};
const pull = (value: number): Test => ({
  ...record('TS-1'),
  testKind: 'coupon pull',
  of: ['P'],
  date: '2026-03-03',
  limit: { value: 1000, dimension: 'count', text: '1000' },
  measured: { value, dimension: 'count', text: String(value) },
});
const panel = (more: Partial<Bond> = {}, how: Partial<Fixing> = {}): Panel =>
  flatPanel('P', 0, { stage: 'skin', fixing: { ...fixing, ...how }, bond: { ...bond, ...more } });
const model = (one: Panel, more: { pulled?: number; signed?: boolean } = {}) =>
  buildModel({
    panels: [one],
    tests: [pull(more.pulled ?? 1500)],
    signoffs: more.signed ? [{ ...record('S'), stage: 'skin', role: 'lead', by: 'J2', date: '2026-04-01' }] : [],
  });

describe('dewPointK', () => {
  // Table of dew points, DIN 4108-3, from memory: to a tenth of a degree
  it.each([
    [20, 30, 1.9],
    [20, 40, 6.0],
    [20, 50, 9.3],
    [20, 60, 12.0],
    [20, 70, 14.4],
    [20, 80, 16.4],
    [20, 90, 18.3],
    [10, 50, 0.1],
    [10, 70, 4.8],
    [15, 50, 4.7],
    [15, 70, 9.6],
    [25, 50, 13.9],
    [25, 70, 19.1],
    [30, 50, 18.4],
    [30, 70, 23.9],
  ])('air of %d °C at %d %%: %d °C', (air, humidity, dew) =>
    expect(Math.abs(dewPointK(air + K, humidity / 100) - K - dew)).toBeLessThan(0.15),
  );

  it('is the air itself at 100 %, and falls with the humidity', () => {
    expect(dewPointK(290, 1)).toBeCloseTo(290, 9);
    for (let humidity = 0.1; humidity < 1; humidity += 0.1) {
      expect(dewPointK(290, humidity)).toBeLessThan(dewPointK(290, humidity + 0.1));
    }
  });
});

describe('panel.bond-dew-point', () => {
  const judged = (surfaceC: number) => judgeStructure(bondDewPoint, model(panel({ surfaceK: surfaceC + K })));

  it('wants 3 K over the dew point of 9.3 °C', () => {
    expect(judged(12.3)).toEqual([]);
    expect(judged(12.2)[0]).toMatchObject({ severity: 'warning', ids: ['P'] });
    expect(judged(8)[0]?.message).toContain('−1.3 K above the dew point (9 °C)');
  });

  it('judges nothing where a reading is missing, nor dry air of 0 %', () => {
    expect(judgeStructure(bondDewPoint, model(panel({ surfaceK: 1, humidity: undefined })))).toEqual([]);
    expect(judgeStructure(bondDewPoint, model(panel({ surfaceK: 1, humidity: 0 })))).toEqual([]);
  });
});

describe('panel.bond-time', () => {
  const judged = (more: Partial<Bond>) => judgeStructure(bondTime, model(panel(more))).map(({ message }) => message);

  it('the limit itself is kept', () => {
    expect(judged({ openTimeS: 1800 })).toEqual([]);
    expect(judged({ openTimeS: 1860 })[0]).toContain('31 min after spreading, expected within 30 min');
  });

  it('a cure is judged where the adhesive’s least is on record', () => {
    expect(judged({ cureS: 3600 })).toEqual([]);
    expect(judged({ cureS: 86_400, cureLeastS: 86_400 })).toEqual([]);
    expect(judged({ cureS: 36_000, cureLeastS: 86_400 })[0]).toContain('10.0 h after bonding, expected at least 24.0 h');
  });
});

describe('panel.bond-not-verified', () => {
  const judged = (...given: Parameters<typeof model>) => judgeStructure(bondNotVerified, model(...given));

  it('a whole log with a passed coupon is quiet; a screwed panel, or one still in the rack, has no log', () => {
    expect(judged(panel())).toEqual([]);
    expect(judged(flatPanel('P', 0, { fixing: { method: 'screws' } }))).toEqual([]);
    expect(judged(panel({ surfaceK: undefined }, { applied: undefined }))).toEqual([]);
  });

  it.each(['surfaceK', 'airK', 'humidity', 'openTimeS', 'openTimeLimitS', 'cureS', 'coupon'] as const)(
    'without %s it is a note, and a warning once its stage is signed off',
    (key) => {
      const bare = panel({ [key]: undefined });
      expect(judged(bare).map(({ severity }) => severity)).toEqual(['note']);
      expect(judged(bare, { signed: true }).map(({ severity }) => severity)).toEqual(['warning']);
    },
  );

  it('names the lot and the expiry when they are missing', () => {
    expect(judged(panel({}, { lot: undefined, expires: undefined }))[0]?.message).toContain(
      '`fixing: lot`, `fixing: expires` are missing',
    );
  });

  it('does not take a coupon that failed, or that shows nothing', () => {
    expect(judged(panel(), { pulled: 900 })[0]).toMatchObject({ severity: 'warning', ids: ['P', 'TS-1'] });
    const [weak] = judgeStructure(bondNotVerified, {
      ...buildModel({ panels: [panel()], tests: [{ ...pull(1), measured: undefined }] }),
    });
    expect(weak?.message).toContain('its coupon TS-1 is not verified');
  });
});

describe('bondFigures', () => {
  it('gives dew point, margin and coupon beside each other', () => {
    const [figure] = bondFigures(model(panel({ surfaceK: 18 + K })));
    expect(figure?.dewMarginK).toBeCloseTo(18 - 9.27, 1);
    expect(figure).toMatchObject({ panel: 'P', coupon: 'passed', missing: [] });
  });
});
