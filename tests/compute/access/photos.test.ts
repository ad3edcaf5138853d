import { describe, expect, it } from 'vitest';
import { photoCoverage } from '../../../src/compute/access/photos.js';
import type { Photo } from '../../../src/records/index.js';
import { photoGap } from '../../../src/rules/order/photo-gap.js';
import { runRule } from '../../../src/rules/rule.js';
import { assessment } from '../../query/lookup/assessment.js';
import { buildModel, record } from '../../support/build.js';
import { levelPanel, node, run, zone } from '../../support/services.js';

const trough = zone(
  'TC',
  [
    [0, -200, 0],
    [2000, 200, 300],
  ],
  { closedBy: ['BP'] },
);
const belly = (date?: string) => levelPanel('BP', [1000, 0, 0], [2000, 400], date === undefined ? {} : { date });
const [a, s, b] = [
  node('A', [-500, 0, 100], { nodeKind: 'device' }),
  node('S', [1200, 0, 100]),
  node('B', [2500, 0, 100], { nodeKind: 'load' }),
];
const runs = [run('R/1', a, s), run('R/2', s, b)];
const photo = (id: string, more: Partial<Photo>): Photo => ({
  ...record(id),
  file: `${id}.jpg`,
  of: ['TC'],
  taken: '2026-04-01',
  ...more,
});
const shell = (photos: readonly Photo[], date?: string) => ({
  zones: [trough],
  panels: [belly(date)],
  nodes: [a, s, b],
  runs,
  photos,
});
const cover = (photos: readonly Photo[], date?: string) => photoCoverage(buildModel(shell(photos, date)));
/** Half of the trough, from its front end. */
const half = {
  shows: [
    [0, -200, 0],
    [1000, 200, 300],
  ] as const,
};

describe('what pictures show of what is closed in', () => {
  it('counts the length in concealed cavities only, in pieces of 100 mm', () => {
    // R/1 from 0 to 1200 and R/2 from 1200 to 2000; 500 mm at each end are open. The end within the slack of 15 mm counts.
    expect(cover([]).runLengthMm).toBeCloseTo(2000, 6);
    expect(cover([]).shownMm).toBe(0);
    expect(cover([]).gaps.map(({ run: id, fromMm, toMm }) => [id, Math.round(fromMm), Math.round(toMm)])).toEqual([
      ['R/1', 500, 1700],
      ['R/2', 0, 800],
    ]);
  });

  it('goes as far as the picture says that it shows', () => {
    const found = cover([photo('P', half)]);
    expect(found.shownMm).toBeCloseTo(1000, 6);
    expect(found.gaps.map(({ run: id, fromMm }) => [id, Math.round(fromMm)])).toEqual([
      ['R/1', 1500],
      ['R/2', 0],
    ]);
    expect(found.gaps[0]).toMatchObject({ zones: ['TC'], panels: ['BP'] });
  });

  it('or as far as the camera sees: 45° to each side of straight up, 1000 under the run', () => {
    const camera = { at: [1000, 0, -900], towards: [1000, 0, 100], angleDeg: 90 } as const;
    const shown = cover([photo('P', { camera })]).shownMm;
    // From 0 to 2000, the pieces at the very ends by their middles.
    expect(shown).toBeCloseTo(2000, 6);
    expect(cover([photo('P', { camera: { ...camera, angleDeg: 53.13 } })]).shownMm).toBeCloseTo(1000, 6);
  });

  it('proves no length without either, and says so', () => {
    expect(cover([photo('P', {})])).toMatchObject({ shownMm: 0, withoutExtent: ['P'] });
  });

  it('wants the picture to be of it, and of before the panel went on', () => {
    expect(cover([photo('P', { ...half, of: ['OTHER'] })]).shownMm).toBe(0);
    expect(cover([photo('P', { ...half, of: ['R/1'] })]).shownMm).toBeCloseTo(1000, 6);
    expect(cover([photo('P', half)], '2026-04-01').shownMm).toBeCloseTo(1000, 6);
    expect(cover([photo('P', half)], '2026-03-31').shownMm).toBe(0);
    expect(cover([photo('P', half)], '2026-03-31').gaps[0]?.closed).toBe('2026-03-31');
    const { taken: _, ...undated } = photo('P', half);
    expect(cover([undated as Photo], '2026-04-01').shownMm).toBe(0);
  });

  it('never falls with one more picture', () => {
    const before = cover([photo('P', half)]);
    const after = cover([
      photo('P', half),
      photo('Q', {
        shows: [
          [900, -200, 0],
          [1500, 200, 300],
        ],
      }),
    ]);
    expect(after.shownMm).toBeGreaterThan(before.shownMm);
    expect(after.joints).toEqual([{ id: 'S', zones: ['TC'], photos: ['Q'] }]);
  });
});

describe('order.photo-gap', () => {
  const told = (photos: readonly Photo[], date?: string) => {
    const { model, figures } = assessment(shell(photos, date));
    return runRule(photoGap, { model, figures }).map(({ severity, message }) => [severity, message]);
  };
  const all = {
    shows: [
      [0, -200, 0],
      [2000, 200, 300],
    ] as const,
  };

  it('lists what is missing before the panel goes on', () => {
    expect(told([photo('P', half)])).toEqual([
      [
        'note',
        'In TC, 1,000 mm of run is in no picture (R/1, R/2) and S in fewer than two, expected before BP is closed: take them, and write `shows` or `camera` beside each',
      ],
    ]);
  });

  it('says once what was closed in without, and nothing where all is shown', () => {
    expect(told([photo('P', half)], '2026-04-02')[0]?.[1]).toMatch(/^Closed in, 1,000 mm of run/u);
    expect(told([photo('P', all), photo('Q', all)])).toEqual([]);
  });
});
