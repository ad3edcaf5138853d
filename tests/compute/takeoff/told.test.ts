import { describe, expect, it } from 'vitest';
import { takeOff } from '../../../src/compute/takeoff/index.js';
import type { Vec3 } from '../../../src/geometry/vector.js';
import type { Model } from '../../../src/model/shell.js';
import type { Member, Panel } from '../../../src/records/index.js';
import { aluminium, buildModel, record, section } from '../../support/build.js';

const sizes = { shape: 'custom', depthMm: 50, widthMm: 50, areaMm2: 500, ixMm4: 1, iyMm4: 1 } as const;
const sections = new Map(
  [
    section('BARE', sizes),
    section('FULL', { ...sizes, jMm4: 9 }),
    section('FLAT', { shape: 'flat bar', depthMm: 9, widthMm: 9 }),
  ].map((one) => [one.id, one]),
);
const line = (id: string, of: string, alloy = '6061-T6'): Member => ({
  ...record(id),
  part: 'part',
  alloy,
  shape: { kind: 'line', section: of, from: [0, 0, 0], to: [1000, 0, 0], rollDeg: 0 },
});
const square: Vec3[] = [
  [0, 0, 0],
  [1000, 0, 0],
  [1000, 0, 1000],
  [0, 0, 1000],
];
const panel = (id: string, more: Partial<Panel> = {}): Panel => ({
  ...record(id),
  panelKind: 'skin',
  alloy: '6061-T6',
  thicknessMm: 2,
  outline: square,
  holes: [],
  ...more,
});
const run = (id: string, path: readonly Vec3[]) => ({
  ...record(id),
  service: 'S',
  medium: 'dc' as const,
  from: 'a',
  to: 'b',
  via: [],
  path,
  zones: [],
  grommets: [],
});
const component = { ...record('C'), name: 'C', massKg: 9, at: [0, 0, 0] as Vec3, basis: 'weighed' as const };

// Every sentence that a figure leans on stands beside it, and none that this shell does not call for. Common practice, no source.
describe('what the take-off stands on', () => {
  const said = (shell: Partial<Model['shell']>) => takeOff(buildModel(shell, { sections })).assumptions;
  const more = (shell: Partial<Model['shell']>) => {
    const always = said({});
    return said(shell).filter((words) => !always.includes(words));
  };
  const many = (count: number) => Array.from({ length: count }, (_, i) => panel(`P${i + 1}`, { thicknessMm: undefined }));
  const panels = ['Panels weigh net area', 'Adhesive, sealant'];
  const members = ['Members weigh section area', 'Section properties follow'];
  const runs = ['Wires weigh their metal', 'Pipes weigh their wall'];

  it('is three sentences on sums, whatever is on record', () => expect(said({})).toHaveLength(3));
  it.each<[string, Partial<Model['shell']>, readonly string[]]>([
    ['members', { members: [line('M', 'FLAT')] }, members],
    ['panels', { panels: [panel('P')] }, panels],
    ['a panel that was weighed', { panels: [panel('P', { massKg: 9, alloy: undefined, thicknessMm: undefined })] }, panels],
    [
      'a panel without an alloy',
      { panels: [panel('P'), panel('Q', { alloy: undefined })] },
      [...panels, 'weighed mass: panels Q.'],
    ],
    ['ten panels without a thickness', { panels: many(10) }, [...panels, 'panels P1, P2, P3, P4, P5, P6, P7, P8, P9, P10.']],
    ['twelve of them', { panels: many(12) }, [...panels, 'P9, P10 and 2 more.']],
    ['components', { components: [component] }, ['Components weigh what is recorded']],
    [
      'runs of no known make',
      {
        runs: [
          run('R', [
            [0, 0, 0],
            [9, 0, 0],
          ]),
          run('NO-WAY', []),
        ],
      },
      [...runs, 'conductor or size: runs R.', 'nor the places of both ends are recorded: runs NO-WAY.'],
    ],
    [
      'runs of a known one',
      {
        runs: [
          {
            ...run('R', [
              [0, 0, 0],
              [9, 0, 0],
            ]),
            conductor: { awg: '10', conductors: 2, material: 'copper' as const },
          },
        ],
      },
      runs,
    ],
    ['a custom section without a torsion constant', { members: [line('M', 'BARE')] }, [...members, 'show 0: BARE.']],
    ['a custom section with one', { members: [line('M', 'FULL')] }, members],
    [
      'alloys that the library lacks',
      { members: [line('M', 'FLAT', 'Z9'), line('N', 'FLAT', 'X1')], panels: [panel('P', { alloy: 'Z9' })] },
      [...members, ...panels, '2700 kg/m³: X1, Z9.'],
    ],
  ])('more of %s', (_name, shell, expected) => {
    expect(more(shell)).toEqual(expected.map((words) => expect.stringContaining(words)));
  });
  it('counts a panel without alloy or thickness as nothing, in its own alloy else', () => {
    const heavy = { ...aluminium, id: 'HEAVY', densityKgM3: 8000 };
    const list = [panel('A', { alloy: 'HEAVY' }), panel('B', { alloy: undefined }), panel('C', { thicknessMm: undefined })];
    const { items } = takeOff(buildModel({ panels: list }, { materials: new Map([[heavy.id, heavy]]) }));
    expect(items.map((one) => one.massKg)).toEqual([expect.closeTo(16, 9), 0, 0]);
  });
});
