/** A made-up shell of some size, from loops, for drawing tests. Inches here, as a shop measures; mm inside. */
import type { Assessment, Figures } from '../../src/assess.js';
import type { Vec3 } from '../../src/geometry/vector.js';
import type { Medium, Member, NodeKind, Panel, Run, ServiceNode } from '../../src/records/index.js';
import { buildModel, record, section } from '../support/build.js';
import type { Model } from '../support/types.js';

const IN = 25.4;
const at = (x: number, y: number, z: number): Vec3 => [x * IN, y * IN, z * IN];

type Place = readonly [number, number, number];

export function member(id: string, stage: string, sectionId: string, from: Place, to: Place, rollDeg = 0): Member {
  return {
    ...record(id),
    stage,
    part: id,
    alloy: '6061-T6',
    shape: { kind: 'line', section: sectionId, from: at(...from), to: at(...to), rollDeg },
  };
}

const two = (k: number): string => String(k).padStart(2, '0');

function members(): readonly Member[] {
  const list: Member[] = [
    member('SF-L', 'subframe', 'RT6', [-10, -17, 3], [400, -17, 3]),
    member('SF-R', 'subframe', 'RT6', [-10, 17, 3], [400, 17, 3]),
    member('WR-L', 'walls', 'RT2', [64, -49, 96], [400, -49, 96]),
    member('WR-R', 'walls', 'RT2', [64, 49, 96], [400, 49, 96]),
  ];
  for (let k = 0; k < 18; k++)
    list.push(member(`CB-${two(k)}`, 'subframe', 'RT4', [64 + k * 19.7, -50, 8], [64 + k * 19.7, 50, 8]));
  for (let k = 0; k < 18; k++) {
    for (const [side, y] of [
      ['L', -49],
      ['R', 49],
    ] as const) {
      list.push(member(`P-${side}${two(k)}`, 'walls', 'RT2', [64 + k * 19.7, y, 10], [64 + k * 19.7, y, 95]));
      if (k < 17) list.push(member(`WG-${side}${two(k)}`, 'walls', 'RT2', [65 + k * 19.7, y, 48], [82.7 + k * 19.7, y, 48]));
    }
    list.push(member(`TR-${two(k)}`, 'roof', 'RT2', [64 + k * 19.7, -48, 99], [64 + k * 19.7, 48, 99]));
  }
  for (let k = 0; k < 4; k++) list.push(member(`RP-${k}`, 'roof', 'RT2', [64, -36 + k * 24, 101], [400, -36 + k * 24, 101]));
  return list;
}

export function panel(id: string, kind: Panel['panelKind'], corners: readonly Place[], more: Partial<Panel> = {}): Panel {
  return { ...record(id), panelKind: kind, outline: corners.map((c) => at(...c)), holes: [], ...more };
}

function panels(): readonly Panel[] {
  const list: Panel[] = [];
  for (let k = 0; k < 7; k++) {
    const [x0, x1] = [64 + k * 48, 64 + (k + 1) * 48];
    for (const [side, y] of [
      ['L', -50.5],
      ['R', 50.5],
    ] as const) {
      list.push(
        panel(`SK-${side}-${two(k)}`, 'skin', [
          [x0, y, 4],
          [x1, y, 4],
          [x1, y, 98],
          [x0, y, 98],
        ]),
      );
      list.push(
        panel(
          `AP-${side}${k}`,
          'access',
          [
            [x0 + 8, y, 6],
            [x0 + 30, y, 6],
            [x0 + 30, y, 20],
            [x0 + 8, y, 20],
          ],
          { openingMm: [20 * IN, 12 * IN], facing: side === 'L' ? 'left' : 'right', of: `SK-${side}-${two(k)}` },
        ),
      );
    }
    list.push(
      panel(`RF-${two(k)}`, 'roof', [
        [x0, -50, 102],
        [x1, -50, 102],
        [x1, 50, 102],
        [x0, 50, 102],
      ]),
    );
    list.push(
      panel(`BP-${two(k)}`, 'belly', [
        [x0, -17, -2],
        [x1, -17, -2],
        [x1, 17, -2],
        [x0, 17, -2],
      ]),
    );
    list.push(
      panel(
        `AP-B${k}`,
        'access',
        [
          [x0 + 10, -8, -2.2],
          [x0 + 28, -8, -2.2],
          [x0 + 28, 6, -2.2],
          [x0 + 10, 6, -2.2],
        ],
        { openingMm: [16 * IN, 12 * IN], facing: 'down', of: `BP-${two(k)}` },
      ),
    );
  }
  list.push(
    panel('CAP-R', 'cap', [
      [400, -50, 4],
      [400, 50, 4],
      [400, 50, 101],
      [400, -50, 101],
    ]),
  );
  list.push(
    panel('CAP-F', 'cap', [
      [64, -50, 4],
      [64, 50, 4],
      [64, 50, 101],
      [64, -50, 101],
    ]),
  );
  return list;
}

export function node(id: string, medium: Medium, nodeKind: NodeKind, place: Place, name?: string): ServiceNode {
  return { ...record(id), service: medium, medium, nodeKind, at: at(...place), ...(name ? { name } : {}) };
}

export function run(id: string, medium: Medium, from: ServiceNode, to: ServiceNode, via: readonly Place[] = []): Run {
  const middle = via.map((place) => at(...place));
  return {
    ...record(id),
    service: medium,
    medium,
    from: from.id,
    to: to.id,
    via: middle,
    path: from.at && to.at ? [from.at, ...middle, to.at] : [],
    zones: [],
    grommets: [],
    ...(medium === 'gas' ? {} : { toleranceMm: 15 }),
  };
}

function services(): { nodes: readonly ServiceNode[]; runs: readonly Run[] } {
  const dcp = node('DCP', 'dc', 'panel', [90, -40, 30], 'House DC panel');
  const battery = node('BATT', 'dc', 'source', [100, -30, 14], 'House battery');
  const main = node('DC-MAIN', 'dc', 'valve', [96, -38, 20], 'Battery disconnect');
  const shore = node('SHORE', 'ac', 'source', [380, -50, 30], 'Shore inlet');
  const acp = node('ACP', 'ac', 'panel', [92, 40, 40], 'Mains panel');
  const cylinder = node('LPG', 'gas', 'source', [250, -44, 10], 'LPG cylinder');
  const shut = node('GV-1', 'gas', 'valve', [244, -44, 12], 'Gas shut-off');
  const nodes: ServiceNode[] = [dcp, battery, main, shore, acp, cylinder, shut];
  const runs: Run[] = [run('DC-0/1', 'dc', battery, main), run('DC-0/2', 'dc', main, dcp)];
  runs.push(
    run('AC-0/1', 'ac', shore, acp, [
      [380, -14, 1],
      [92, 14, 1],
      [92, 40, 1],
    ]),
    run('GAS/1', 'gas', cylinder, shut),
  );
  for (let k = 0; k < 9; k++) {
    const x = 80 + k * 36;
    const splice = node(`DC-${10 + k}/S1`, 'dc', 'splice', [x, -8 + k, 1]);
    const load = node(`DC-${10 + k}/L1`, 'dc', 'load', [x + 6, k % 2 ? 40 : -40, 90], `Light ${k}`);
    nodes.push(splice, load);
    runs.push(
      run(`DC-${10 + k}/1`, 'dc', dcp, splice, [
        [90, -40, 1],
        [90, -10, 1],
        [x, -10, 1],
      ]),
    );
    runs.push(
      run(`DC-${10 + k}/2`, 'dc', splice, load, [
        [x, k % 2 ? 49 : -49, 1],
        [x, k % 2 ? 49 : -49, 90],
      ]),
    );
    const tap = node(`W-${k}`, 'water', k % 3 === 0 ? 'valve' : 'fitting', [x + 4, 30, 36]);
    nodes.push(tap);
    runs.push(
      run(`WT-${k}`, 'water', shut, tap, [
        [244, 20, 2],
        [x + 4, 20, 2],
        [x + 4, 30, 2],
      ]),
    );
    const stove = node(`G-${k}`, 'gas', 'load', [x, -46, 40]);
    nodes.push(stove);
    runs.push(
      run(`GAS/${k + 2}`, 'gas', shut, stove, [
        [244, -49, 6],
        [x, -49, 6],
        [x, -49, 40],
      ]),
    );
  }
  return { nodes, runs };
}

const tyres = { count: 2, loadIndex: [150] } as const;

export function sampleModel(): Model {
  const list = members();
  const { nodes, runs } = services();
  const axle = (id: string, x: number, trackMm: number, dual: boolean) => ({
    id,
    xMm: x * IN,
    gawrKg: 9000,
    trackMm,
    dual,
    lift: false,
    steered: x === 0,
    tyres,
  });
  return buildModel(
    {
      title: 'Travelling soil laboratory',
      envelope: { lengthMm: 336 * IN, widthMm: 101 * IN, heightMm: 98 * IN },
      chassis: {
        frame: { railTopAboveGroundMm: 41 * IN, railSpacingMm: 34 * IN },
        axles: [axle('steer', 0, 83 * IN, false), axle('drive', 255, 73 * IN, true), axle('tag', 307, 80 * IN, false)],
      },
      members: list,
      panels: panels(),
      nodes,
      runs,
      openings: [
        {
          ...record('SO-1'),
          openingKind: 'slide-out',
          wall: 'left',
          sill: [at(150, -50.5, 16), at(290, -50.5, 16)],
          widthMm: 140 * IN,
          heightMm: 68 * IN,
          measured: {
            topMm: 140.06 * IN,
            bottomMm: 140 * IN,
            frontMm: 68 * IN,
            rearMm: 68.06 * IN,
            diagonalsMm: [155.7 * IN, 155.63 * IN],
            headerSag: [{ atMm: 70 * IN, dropMm: 0.8 }],
          },
          header: 'WR-L',
          gussets: ['P-L04', 'P-L05'],
        },
      ],
      tanks: [
        { id: 'FRESH', contents: 'water', capacityM3: 0.378, at: at(290, 0, -6), densityKgM3: 1000 },
        { id: 'FUEL', contents: 'diesel', capacityM3: 0.378, at: at(60, -38, 0), densityKgM3: 840 },
      ],
      seats: [{ id: 'driver', at: at(40, -20, 30), belted: true }],
      bays: [
        { id: 'B3-L', at: at(180, -38, -10), limitKg: 272 },
        { id: 'B3-R', name: 'Rear tool bay', at: at(330, 38, -10) },
      ],
      components: [
        { ...record('GEN'), name: 'Generator', massKg: 120, at: at(360, 0, 14), basis: 'weighed', sizeMm: [600, 500, 450] },
        { ...record('BAT-1'), name: 'Battery bank', massKg: 90, at: at(100, -30, 14), basis: 'weighed', sizeMm: [500, 300, 250] },
        {
          ...record('AC-1'),
          name: 'Roof air conditioner',
          massKg: 50,
          at: at(200, 0, 108),
          basis: 'catalogue',
          sizeMm: [900, 700, 300],
        },
      ],
    },
    {
      stages: [
        { ...record('subframe'), name: 'Subframe', holdPoints: [] },
        { ...record('walls'), name: 'Walls', holdPoints: [] },
        { ...record('roof'), name: 'Roof', holdPoints: [] },
      ],
      sections: new Map([
        ['RT6', section('RT6', { shape: 'rectangular tube', depthMm: 152.4, widthMm: 63.5, wallMm: 9.5, cornerRadiusMm: 0 })],
        ['RT4', section('RT4', { shape: 'rectangular tube', depthMm: 101.6, widthMm: 50.8, wallMm: 4.8, cornerRadiusMm: 0 })],
        ['RT2', section('RT2', { shape: 'rectangular tube', depthMm: 50.8, widthMm: 50.8, wallMm: 3.2, cornerRadiusMm: 0 })],
      ]),
    },
    { units: 'us' },
  );
}

/** Only what drawings read, so that these tests stand on no other part's arithmetic. */
export function assessmentOf(model: Model, figures: Partial<Figures> = {}): Assessment {
  const none = { nodes: 0, nodesInReach: 0, runLengthMm: 0, runLengthInReachMm: 0 };
  return {
    model,
    findings: [],
    figures: {
      takeOff: { runs: [] },
      joints: { joints: [], found: 0, recorded: 0, missing: [], withoutJoint: [] },
      heatAffectedZones: [],
      weights: { ratings: [], conditions: [], tickets: [], bays: [], growth: [], influence: [] },
      access: { nodes: [], runs: [], behind: {}, coverage: none, assumptions: [] },
      openings: [{ id: 'SO-1', diagonalDifferenceMm: 1.7, rackingDeg: 0.02, sagMm: 0.8, gussets: [] }],
      ...figures,
    } as unknown as Figures,
  };
}

/** What the charts read, no more. Loads of three axles in five conditions, one of them over. */
export function sampleWeights(): Figures['weights'] {
  const load = (axle: string, loadKg: number, limitKg: number, verdict: 'within' | 'over' | 'within uncertainty') => ({
    axle,
    loadKg,
    limitKg,
    marginKg: limitKg - loadKg,
    uncertaintyKg: 120,
    verdict,
    lifted: false,
  });
  const condition = (name: string, more: number) => ({
    name,
    totalKg: 20000 + more,
    centroid: [4000, 0, 800] as const,
    uncertaintyKg: 150,
    verdict: 'within' as const,
    contributions: [],
    axles: [
      load('steer', 5600 + more * 0.2, 6622, 'within'),
      load('drive', 8800 + more * 0.5, 10433, more > 3500 ? 'over' : 'within'),
      load('tag', 5600 + more * 0.3, 7000, more > 3500 ? 'within uncertainty' : 'within'),
    ],
  });
  return {
    ratings: [],
    conditions: ['unladen', 'occupants', 'water', 'loaded', 'waste'].map((name, k) => condition(name, k === 3 ? 4200 : k * 500)),
    tickets: [],
    fullWaterKg: 378,
    bays: [{ id: 'B3-L', statedKg: 272, allowanceKg: 310, limitedBy: 'drive', togetherKg: 200 }],
    growth: [
      { stage: 'subframe', predictedKg: 9200, measuredKg: 9260, uncertaintyKg: 60 },
      { stage: 'walls', predictedKg: 10100 },
      { stage: 'roof', predictedKg: 10900, measuredKg: 11050, uncertaintyKg: 70 },
    ],
    influence: Array.from({ length: 21 }, (_, k) => {
      const xMm = -1000 + k * 600;
      const rear = xMm / (281 * IN);
      return { xMm, addsKg: { steer: 100 * (1 - rear), drive: 58 * rear, tag: 42 * rear } };
    }),
    basis: 'ticket',
    assumptions: [],
    problems: [],
  } as unknown as Figures['weights'];
}

/** What lies behind a belly access panel of the sample. */
export const sampleBehind: Figures['access']['behind'] = {
  'AP-B1': [
    { id: 'DC-11/S1', kind: 'node', distanceMm: 90, reach: 'hand', blockedBy: [], nearest: at(116, -7, 1) },
    ...['DC-12/1', 'DC-13/1', 'DC-14/1', 'AC-0/1'].map((id, k) => ({
      id,
      kind: 'run' as const,
      distanceMm: 80 + k * 60,
      reach: 'hand' as const,
      blockedBy: [],
      nearest: at(130, -10, 1),
    })),
    { id: 'CB-03', kind: 'member', distanceMm: 200, reach: 'forearm', blockedBy: [], nearest: at(123, 0, 6) },
  ],
};
