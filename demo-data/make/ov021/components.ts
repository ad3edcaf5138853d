import { at, type P, pounds } from '../inches.js';
import { list, type Rec } from '../yaml.js';

type Basis = 'weighed' | 'catalogue' | 'calculated' | 'estimated';
/** id, what it is, pounds, centre of gravity, stage, day, basis, outside size. */
type Row = readonly [string, string, number, P, string, string, Basis, P?, Rec?];

const ROWS: readonly Row[] = [
  ['CMP-01', 'damper pads and plates, set', 62, [200, 0, 0.4], 'subframe', '2025-10-02', 'weighed'],
  ['CMP-02', 'U-bolts, saddles and hardware, set', 118, [200, 0, -4], 'subframe', '2025-10-02', 'weighed'],
  ['CMP-03', 'floor plywood 3/4 in, sealed, front half', 345, [126, 0, 11.1], 'floor', '2025-10-30', 'calculated'],
  ['CMP-54', 'floor plywood 3/4 in, sealed, rear half', 345, [290, 0, 11.1], 'floor', '2025-10-30', 'calculated'],
  ['CMP-04', 'floor insulation, under', 96, [208, 0, 8.6], 'floor', '2025-10-30', 'calculated'],
  ['CMP-05', 'grey tank, empty, with straps', 58, [196, -36, -9], 'services', '2026-03-13', 'weighed', [30, 18, 14]],
  ['CMP-06', 'fresh tank, empty, with tray', 44, [88, -36, 24], 'services', '2026-03-12', 'weighed', [20, 20, 22]],
  ['CMP-07', 'propane tank, empty, with frame', 74, [40, -40, -10], 'services', '2026-03-19', 'weighed', [30, 16, 16]],
  ['CMP-08', 'house battery', 228, [54, -14, 20], 'services', '2026-03-06', 'catalogue', [10, 20, 14]],
  ['CMP-09', 'DC panel, fuses and battery switchgear', 46, [48, -28, 56], 'services', '2026-03-06', 'weighed'],
  ['CMP-10', 'mains panel, transfer switch and charger', 88, [49, 32, 48], 'services', '2026-03-17', 'weighed'],
  ['CMP-11', 'generator, 7 kW diesel, with cradle', 472, [350, -34, -14], 'services', '2026-03-18', 'catalogue', [30, 20, 22]],
  ['CMP-12', 'roof unit 1', 96, [161.25, 0, 102], 'services', '2026-03-20', 'catalogue', [30, 28, 12]],
  ['CMP-13', 'roof unit 2', 96, [254.25, 0, 102], 'services', '2026-03-20', 'catalogue', [30, 28, 12]],
  ['CMP-14', 'solar panels, eight', 344, [230, 0, 101], 'services', '2026-03-23', 'catalogue'],
  [
    'CMP-15',
    'furnace',
    52,
    [130.25, -38, 19],
    'services',
    '2026-03-10',
    'catalogue',
    [12, 16, 12],
    { hot: 'dry', keep_clear: '6 in' },
  ],
  ['CMP-16', 'water heater, empty', 48, [116, -43, 20], 'services', '2026-03-12', 'catalogue', [14, 12, 14]],
  ['CMP-17', 'slide-out power pack and cylinders', 186, [222, -22, 14], 'services', '2026-03-31', 'weighed'],
  ['CMP-18', 'network shelf', 18, [48, -38, 72], 'services', '2026-03-24', 'weighed'],
  ['CMP-19', 'wall and roof insulation', 214, [208, 0, 62], 'services', '2026-04-02', 'calculated'],
  ['CMP-20', 'windows, four', 268, [204, 0, 62], 'skin', '2026-02-19', 'weighed'],
  ['CMP-21', 'entry door', 84, [122.5, 49, 48], 'skin', '2026-02-19', 'weighed'],
  ['CMP-22', 'rear loading door', 92, [371, 0, 48], 'skin', '2026-02-19', 'weighed'],
  ['CMP-23', 'adhesive, sealant and tape in place', 66, [208, 0, 52], 'skin', '2026-02-19', 'calculated'],
  ['CMP-24', 'belly insulation and baffles', 58, [180, 0, 3.5], 'belly', '2026-04-28', 'calculated'],
  ['CMP-25', 'basement lockers left, two', 190, [140, -38, -12], 'belly', '2026-04-30', 'weighed'],
  ['CMP-26', 'basement lockers right, four', 350, [218, 38, -12], 'belly', '2026-04-30', 'weighed'],
  ['CMP-30', 'slide-out box with its floor and glass', 1480, [231, -36, 46], 'fitout', '2026-05-06', 'weighed', [120, 30, 66]],
  ['CMP-31', 'hand press', 960, [144, 30, 34], 'fitout', '2026-05-12', 'weighed', [30, 28, 46]],
  ['CMP-32', 'platen press', 1620, [178, 29, 32], 'fitout', '2026-05-12', 'weighed', [40, 30, 44]],
  ['CMP-33', 'guillotine', 940, [200, 30, 30], 'fitout', '2026-05-13', 'weighed', [30, 30, 40]],
  ['CMP-34', 'nipping press', 410, [214, 12, 28], 'fitout', '2026-05-13', 'weighed', [22, 18, 30]],
  ['CMP-35', 'type cases with type, two stands', 1760, [236, -34, 40], 'fitout', '2026-05-19', 'weighed'],
  ['CMP-36', 'imposing stone and frame', 620, [262, 12, 30], 'fitout', '2026-05-19', 'weighed', [36, 24, 36]],
  ['CMP-37', 'sewing frame and bindery bench', 330, [322, -18, 28], 'fitout', '2026-05-26', 'weighed'],
  ['CMP-38', 'type wash sink and front bench', 290, [72, -38, 28], 'fitout', '2026-05-26', 'weighed'],
  ['CMP-39', 'hand basin cabinet', 96, [160, -40, 28], 'fitout', '2026-05-27', 'weighed'],
  ['CMP-40', 'paper racks, right rear', 480, [322, 36, 40], 'fitout', '2026-05-28', 'weighed'],
  ['CMP-41', 'drying lines and racks', 88, [110, 10, 86], 'fitout', '2026-05-29', 'estimated'],
  ['CMP-42', 'front cabinet and bench seat', 260, [60, 18, 30], 'fitout', '2026-06-02', 'weighed'],
  ['CMP-43', 'rear cabinet', 180, [356, -30, 40], 'fitout', '2026-06-02', 'weighed'],
  ['CMP-44', 'floor covering, cork', 190, [208, 0, 11.7], 'fitout', '2026-06-04', 'calculated'],
  ['CMP-45', 'air compressor and receiver', 178, [340, 36, 20], 'fitout', '2026-06-05', 'weighed', [24, 18, 24]],
  ['CMP-46', 'paint, primer and lettering', 148, [208, 0, 52], 'fitout', '2026-06-12', 'estimated'],
  ['CMP-47', 'entry steps and grab rails', 112, [122.5, 46, 2], 'fitout', '2026-06-15', 'weighed'],
  ['CMP-48', 'awning, left', 104, [230, -52, 90], 'finished', '2026-06-23', 'catalogue'],
  ['CMP-49', 'tool and ink cabinets', 360, [290, 34, 36], 'fitout', '2026-06-16', 'weighed'],
  ['CMP-50', 'fire extinguishers, chocks, jack', 84, [130, 44, 16], 'finished', '2026-06-24', 'weighed'],
  [
    'CMP-51',
    'spare wheel and carrier',
    232,
    [366, 18, -8],
    'finished',
    '2026-06-24',
    'weighed',
    undefined,
    { note: 'rear bumper side, swings' },
  ],
  [
    'CMP-52',
    'second solar regulator, front cabinet',
    9,
    [50, -42, 40],
    '',
    '2026-08-19',
    'weighed',
    undefined,
    { note: 'AM-02' },
  ],
  ['CMP-53', 'ink-slab lamp rail', 14, [150, 20, 84], '', '2026-09-22', 'weighed', undefined, { note: 'AM-03' }],
];

/** Part and serial numbers, read from the plates of what has one. */
const PLATES: Readonly<Record<string, readonly [part: string, serial: string]>> = {
  'CMP-08': ['LF-24-400', 'LF24-0391877'],
  'CMP-10': ['TS-50-CH60', 'TS5-20114'],
  'CMP-11': ['GD-7000-C', 'GD7-604412'],
  'CMP-12': ['RU-13', 'RU13-88120'],
  'CMP-13': ['RU-13', 'RU13-88121'],
  'CMP-15': ['FH-18', 'FH18-31552'],
  'CMP-16': ['WH-6-GE', 'WH6-70923'],
  'CMP-17': ['SP-2-24', 'SP2-11408'],
  'CMP-45': ['AC-10-120', 'AC10-5526'],
  'CMP-48': ['AW-16-L', 'AW16-2071'],
  'CMP-52': ['SR-40', 'SR40-99316'],
};

const HEADS: Readonly<Record<string, string>> = {
  subframe: 'Between chassis and shell',
  floor: 'Floor',
  services: 'Services',
  skin: 'Glass, doors',
  belly: 'Belly',
  fitout: 'Fit-out: all over the pads on the way in',
  finished: 'Last things',
};

export function componentsText(): string {
  let last = '';
  const records = ROWS.map(([id, name, lb, place, stage, date, basis, size, more]): Rec => {
    const head = stage !== last && HEADS[stage] ? { '#': last === '' ? HEADS[stage] : ['', HEADS[stage] as string] } : {};
    last = stage;
    return {
      ...head,
      id,
      name,
      mass: pounds(lb),
      at: at(place),
      ...(size ? { size: at(size) } : {}),
      ...(PLATES[id] ? { part: PLATES[id][0], serial: PLATES[id][1] } : {}),
      ...(stage ? { stage } : {}),
      basis,
      date,
      ...more,
    };
  });
  return list(['Everything with a mass that is not frame, sheet, wire or pipe.'], records);
}
