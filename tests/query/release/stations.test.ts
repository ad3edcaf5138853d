import { describe, expect, it } from 'vitest';
import type { Weights } from '../../../src/compute/weights/types.js';
import type { Finding } from '../../../src/finding.js';
import { keepClean, leftOfGvwr, openByZone, stations } from '../../../src/query/release/index.js';
import type { Axle } from '../../../src/records/index.js';
import { buildModel, source } from '../../support/build.js';
import { accessPanel, circuit, levelPanel, node, run, zone } from '../../support/services.js';
import { clamp, lineMember } from '../../support/structure.js';

/** Front axle at 0, rear axle at 5,000 mm; the front one steers. */
const axles = [
  { id: 'front', xMm: 0 },
  { id: 'rear', xMm: 5000 },
] as unknown as readonly Axle[];

interface Given {
  readonly left?: readonly (number | undefined)[];
  readonly ends?: readonly [number | undefined, number | undefined];
  /** Standard conditions: GVWR margin, front and rear load. */
  readonly standard?: readonly (readonly [number | undefined, number, number])[];
}
const roomy: NonNullable<Given['standard']> = [[1e6, 30_000, 40_000]];

/** What the figures of weights say that stations are made of. By the lever: of 100 kg at x, 100 · x / 5000 go to the rear. */
function weightsOf(
  { left = [1e6, 1e6], ends = [undefined, undefined], standard = roomy }: Given,
  stationsAt: readonly number[],
): Weights {
  const condition = (kind: string, [gvwrMarginKg, front, rear]: readonly [number | undefined, number, number]) => ({
    kind,
    gvwrMarginKg,
    totalKg: front + rear,
    steerShare: front / (front + rear),
    axles: [{ loadKg: front }, { loadKg: rear }],
  });
  return {
    influence: stationsAt.map((xMm) => ({ xMm, addsKg: { front: 100 - xMm / 50, rear: xMm / 50 } })),
    budget: [
      { axle: 'rear', leftKg: left[1] },
      { axle: 'front', leftKg: left[0], leftEndKg: ends[0], rightEndKg: ends[1] },
    ],
    // Only the standard ones count: the others would allow nothing.
    conditions: [
      condition('own', [-1, 1, 1]),
      ...standard.map((one) => condition('standard', one)),
      condition('worst', [-1, 1, 1]),
    ],
  } as unknown as Weights;
}
const at = (xMm: number, given: Given) => stations(weightsOf(given, [xMm]), axles)[0];

describe('what is left of the GVWR', () => {
  it('is the least of the standard conditions, and not known where one is not', () => {
    expect(
      leftOfGvwr(
        weightsOf(
          {
            standard: [
              [900, 1, 1],
              [400, 1, 1],
              [700, 1, 1],
            ],
          },
          [],
        ),
      ),
    ).toBe(400);
    expect(
      leftOfGvwr(
        weightsOf(
          {
            standard: [
              [900, 1, 1],
              [undefined, 1, 1],
            ],
          },
          [],
        ),
      ),
    ).toBeUndefined();
    expect(leftOfGvwr(weightsOf({ standard: [] }, []))).toBeUndefined();
  });
});

describe('what a station may take alone', () => {
  it('is the least of what each axle and the whole have left, each by its share', () => {
    expect(at(2000, { left: [300, 1e6] })).toMatchObject({ mostKg: expect.closeTo(300 / 0.6, 9), limitedBy: 'front' });
    expect(at(2000, { left: [300, 100] })).toMatchObject({ mostKg: expect.closeTo(100 / 0.4, 9), limitedBy: 'rear' });
    expect(
      at(2000, {
        standard: [
          [200, 3e4, 4e4],
          [90, 3e4, 4e4],
        ],
      }),
    ).toMatchObject({ mostKg: 90, limitedBy: 'GVWR' });
    expect(at(2000, { left: [-5, 1e6] })).toMatchObject({ mostKg: 0, limitedBy: 'front' });
  });

  it('over one axle asks nothing of the other', () => {
    expect(at(0, { left: [300, 0] })).toMatchObject({ mostKg: 300, limitedBy: 'front' });
    expect(at(5000, { left: [0, 200] })).toMatchObject({ mostKg: 200, limitedBy: 'rear' });
  });

  it('is twice what the fuller end has left, which takes half of the load', () => {
    expect(at(0, { left: [300, 1e6], ends: [100, 180] })).toMatchObject({ mostKg: 200, limitedBy: 'front, left end' });
    expect(at(0, { left: [300, 1e6], ends: [180, 100] })).toMatchObject({ mostKg: 200, limitedBy: 'front, right end' });
    expect(at(2000, { left: [300, 1e6], ends: [180, 100] })).toMatchObject({ mostKg: expect.closeTo(200 / 0.6, 9) });
    expect(at(0, { left: [300, 1e6], ends: [160, 160] })).toMatchObject({ mostKg: 300, limitedBy: 'front' });
    // One end alone says nothing.
    expect(at(0, { left: [300, 1e6], ends: [1, undefined] })).toMatchObject({ mostKg: 300 });
    expect(at(0, { left: [300, 1e6], ends: [undefined, 1] })).toMatchObject({ mostKg: 300 });
  });

  it('beyond an axle is what would lift the other in its lightest condition', () => {
    // 100 kg at −2,500 mm take 50 kg off the rear.
    const standard = [
      [1e6, 30_000, 900],
      [1e6, 30_000, 600],
    ] as const;
    expect(at(-2500, { standard })).toMatchObject({ mostKg: expect.closeTo(600 / 0.5, 9), limitedBy: 'rear lifts' });
  });

  it('rearward is what leaves a fifth on the axle that steers, in the condition that allows least', () => {
    // Lever and share: (2500 − 0.2 · 10000) ÷ (0.2 − 0) at the rear axle
    const standard = [
      [1e6, 4000, 6000],
      [1e6, 2500, 7500],
    ] as const;
    expect(at(5000, { standard })).toMatchObject({ mostKg: expect.closeTo(500 / 0.2, 9), limitedBy: 'steer share' });
    // At 4,000 mm exactly a fifth comes to the front: no limit by that.
    expect(at(4000, { standard, left: [1e5, 1e5] })).toMatchObject({ mostKg: expect.closeTo(1e5 / 0.8, 6), limitedBy: 'rear' });
  });

  it('is not said where an axle or the whole has nothing to be judged by', () => {
    expect(at(2000, { left: [undefined, 100] })).toEqual({ xMm: 2000, addsKg: { front: 60, rear: 40 } });
    expect(at(2000, { standard: [[undefined, 3e4, 4e4]] })).not.toHaveProperty('mostKg');
    expect(at(2000, { standard: [] })).not.toHaveProperty('mostKg');
  });
});

describe('what paint must stay off', () => {
  const model = buildModel({
    nodes: [
      node('N-1', [1, 2, 3], { nodeKind: 'test-point', name: 'gauge tapping' }),
      node('N-2', [1, 2, 3], { nodeKind: 'connector' }),
      node('N-3', [1, 2, 3], { nodeKind: 'junction', marking: 'bond 4' }),
      node('N-4', [1, 2, 3], { nodeKind: 'device', name: 'grounding' }),
      node('N-5', [1, 2, 3], { nodeKind: 'terminal', name: 'sound', marking: 'drain heater' }),
      node('N-6', [1, 2, 3], { nodeKind: 'terminal', name: 'earth', marking: 'ground fault' }),
    ],
    circuits: [circuit('EB', { bonding: true })],
    runs: [run('EB/1', node('N-3', [1, 2, 3]), node('N-4', [1, 2, 3]), [], { circuit: 'EB' })],
    panels: [accessPanel('AP', [10, 20, 30], [100, 100], { name: 'pump' }), levelPanel('SK', [0, 0, 0], [9, 9])],
    clamps: [{ ...clamp('UB', []), at: [7, 8, 9] }],
  });

  it('is told by place and name, each place for its first reason', () => {
    expect(keepClean(model).map(({ what, items }) => [what, items])).toEqual([
      ['ground and bonding pads', [{ id: 'N-3', at: [1, 2, 3] }]],
      ['gauge tappings and test points', [{ id: 'N-1', name: 'gauge tapping', at: [1, 2, 3] }]],
      [
        'terminals and connectors',
        [
          { id: 'N-2', at: [1, 2, 3] },
          { id: 'N-5', name: 'sound', at: [1, 2, 3] },
          { id: 'N-6', name: 'earth', at: [1, 2, 3] },
        ],
      ],
      ['clamps and U-bolts', [{ id: 'UB', name: 'U-bolt', at: [7, 8, 9] }]],
      ['access panels', [{ id: 'AP', name: 'pump', at: [10, 20, 30] }]],
    ]);
    expect(keepClean(buildModel())).toEqual([]);
  });
});

describe('what is open in each zone', () => {
  const [a, b] = [node('A', [50, 0, 0]), node('B', [950, 0, 0])];
  const model = buildModel({
    zones: [
      zone('Z-1', [
        [0, -10, -10],
        [100, 10, 10],
      ]),
      zone('Z-2', [
        [900, -10, -10],
        [1000, 10, 10],
      ]),
      zone('Z-3', [
        [5000, 0, 0],
        [6000, 9, 9],
      ]),
    ],
    nodes: [a, b],
    runs: [run('R-named', a, b, [], { zones: ['Z-2'] }), run('R-lost', a, b, [], { zones: ['gone'] })],
    members: [lineMember('M', [50, 0, 0], [50, 0, 5])],
  });
  const open = (...all: readonly (readonly string[])[]) =>
    openByZone(
      model,
      all.map((ids): Finding => ({ rule: 'r.x', severity: 'warning', message: '', ids, place: source.place() })),
    ).map(({ zone: of, findings }) => `${of?.id}: ${findings.map(({ ids }) => ids.join('+')).join(', ')}`);

  it('goes by the zone itself, the first that a run names, or the place of the record', () => {
    expect(open(['Z-3'], ['A'], ['R-named'], ['M'], ['nowhere'], ['nowhere', 'B'])).toEqual([
      'Z-1: A, M',
      'Z-2: R-named, nowhere+B',
      'Z-3: Z-3',
      'undefined: nowhere',
    ]);
    expect(open(['A'])).toEqual(['Z-1: A']);
    expect(open([])).toEqual(['undefined: ']);
    expect(open()).toEqual([]);
  });

  it('of a run whose zone is not on record goes by its place, in no zone here', () => {
    expect(open(['R-lost'])).toEqual(['undefined: R-lost']);
  });
});
