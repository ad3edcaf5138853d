import type { SectionShape } from '../../src/model/library.js';
import { inch } from './inches.js';
import { list, type Rec } from './yaml.js';

interface SectionDef {
  readonly id: string;
  readonly shape: string;
  readonly d?: number;
  readonly w?: number;
  readonly wall?: number;
  readonly web?: number;
  readonly flange?: number;
  readonly r?: number;
}

const tube = (id: string, d: number, w: number, wall: number): SectionDef => ({ id, shape: 'rectangular tube', d, w, wall });

export const SECTIONS: readonly SectionDef[] = [
  tube('RT6x3x5/16', 6, 3, 5 / 16),
  tube('RT2-1/2x2x1/4', 2.5, 2, 1 / 4),
  { id: 'I4x3', shape: 'I-beam', d: 4, w: 3, web: 0.19, flange: 0.31 },
  tube('RT4-1/2x2x3/16', 4.5, 2, 3 / 16),
  tube('RT4x2x3/16', 4, 2, 3 / 16),
  { id: 'DH3x2x5/32', shape: 'double hollow', d: 3, w: 2, wall: 5 / 32, web: 5 / 32 },
  tube('RT3x2x1/4', 3, 2, 1 / 4),
  tube('RT3x2x3/16', 3, 2, 3 / 16),
  tube('RT2x1-1/2x1/4', 2, 1.5, 1 / 4),
  tube('RT2x2x3/16', 2, 2, 3 / 16),
  tube('RT6x2x1/4', 6, 2, 1 / 4),
  tube('RT6x2x3/16', 6, 2, 3 / 16),
  { id: 'CR6x5/32', shape: 'corner radius', r: 6, wall: 5 / 32 },
  tube('RT1-1/2x1-1/2x1/8', 1.5, 1.5, 1 / 8),
  tube('RT1x1x1/8', 1, 1, 1 / 8),
];

const MM = 25.4;

/** The same sections as the tool reads them, for finding joints. */
export const SHAPES: ReadonlyMap<string, SectionShape> = new Map(
  SECTIONS.map((s): readonly [string, SectionShape] => {
    const mm = (v: number | undefined): number => (v ?? 0) * MM;
    if (s.shape === 'corner radius')
      return [s.id, { shape: 'corner radius', outerRadiusMm: mm(s.r), wallMm: mm(s.wall), sweepDeg: 90 }];
    if (s.shape === 'I-beam')
      return [
        s.id,
        { shape: 'I-beam', depthMm: mm(s.d), widthMm: mm(s.w), webMm: mm(s.web), flangeMm: mm(s.flange), filletMm: 0 },
      ];
    if (s.shape === 'double hollow')
      return [
        s.id,
        { shape: 'double hollow', depthMm: mm(s.d), widthMm: mm(s.w), wallMm: mm(s.wall), webMm: mm(s.web), cornerRadiusMm: 0 },
      ];
    return [s.id, { shape: 'rectangular tube', depthMm: mm(s.d), widthMm: mm(s.w), wallMm: mm(s.wall), cornerRadiusMm: 0 }];
  }),
);

const NOTES: Readonly<Record<string, string>> = {
  'RT6x3x5/16': 'Subframe rails and what hangs on them',
  I4x3: 'Cross beams',
  'DH3x2x5/32': 'Our own die, wall posts: two hollows, web in the middle',
  'CR6x5/32': 'Our own die, roof corner',
  'RT1-1/2x1-1/2x1/8': 'Trusses and small stuff',
};

export function sectionsYaml(): string {
  const records = SECTIONS.map((s): Rec => {
    const size =
      s.shape === 'corner radius'
        ? { outer_radius: inch(s.r as number) }
        : { depth: inch(s.d as number), width: inch(s.w as number) };
    const walls =
      s.shape === 'I-beam'
        ? { web: inch(s.web as number), flange: inch(s.flange as number), fillet: '0.25 in' }
        : s.shape === 'double hollow'
          ? { wall: inch(s.wall as number), web: inch(s.web as number) }
          : { wall: inch(s.wall as number) };
    return { ...(NOTES[s.id] ? { '#': ['', NOTES[s.id] as string] } : {}), id: s.id, shape: s.shape, ...size, ...walls };
  });
  return list(['Extrusions and rolled shapes by their dimensions. Never type an area or a mass here.'], records);
}

export const MATERIALS = list(
  ['Alloys and tempers in the rack. Figures are the handbook’s minimums, not our certs: those are by heat.'],
  [
    {
      id: '6061-T6',
      kind: 'aluminium',
      density: '2700 kg/m3',
      modulus: '68.9 GPa',
      yield: '240 MPa',
      tensile: '260 MPa',
      group: '23',
    },
    {
      id: '6005A-T61',
      kind: 'aluminium',
      density: '2700 kg/m3',
      modulus: '68.9 GPa',
      yield: '240 MPa',
      tensile: '260 MPa',
      group: '23',
      note: 'dies 31 and 44',
    },
    {
      id: '5052-H32',
      kind: 'aluminium',
      density: '2680 kg/m3',
      modulus: '70.3 GPa',
      yield: '160 MPa',
      tensile: '215 MPa',
      group: '22',
      note: 'skins',
    },
    {
      id: '5083-H116',
      kind: 'aluminium',
      density: '2660 kg/m3',
      modulus: '71 GPa',
      yield: '215 MPa',
      tensile: '305 MPa',
      group: '22',
      note: 'gussets, knees',
    },
    {
      id: '3003-H14',
      kind: 'aluminium',
      density: '2730 kg/m3',
      modulus: '68.9 GPa',
      yield: '115 MPa',
      tensile: '140 MPa',
      group: '21',
      note: 'belly, lining, caps',
    },
    { id: 'S355', kind: 'steel', density: '7850 kg/m3', modulus: '210 GPa', note: 'brackets on the chassis side only' },
  ],
);

const paper = (n: number, heats: readonly string[], alloy: string, date: string, type = '3.1'): Rec => ({
  id: `MC-${n}`,
  heats,
  alloy,
  type,
  document: `mill paper ${4000 + n * 7}, grey binder`,
  date,
});

export const CERTIFICATES = list(
  ['What the mill says of each heat in the rack. One paper may cover several heats of a delivery.'],
  [
    { '#': 'For OV-021', ...paper(101, ['H-6120', 'H-6133'], '6061-T6', '2025-09-08') },
    paper(102, ['H-6141', 'H-6142'], '6061-T6', '2025-09-08'),
    paper(103, ['H-6155', 'H-6160'], '6061-T6', '2025-10-20'),
    paper(104, ['H-6204', 'H-6211', 'H-6219'], '6061-T6', '2025-10-31'),
    paper(105, ['D31-0917', 'D31-0922', 'D44-0311'], '6005A-T61', '2025-10-31'),
    paper(106, ['PL-8830'], '5083-H116', '2025-09-26'),
    { '#': ['', 'For OV-024'], ...paper(121, ['H-6377', 'H-6391'], '6061-T6', '2026-05-29') },
    paper(122, ['H-6402', 'H-6408'], '6061-T6', '2026-05-29'),
    { ...paper(123, ['H-6415'], '6061-T6', '2026-07-20', '2.2'), note: 'dealer, not the mill; asked again in August' },
    paper(124, ['D31-1004', 'D44-0318'], '6005A-T61', '2026-07-20'),
    paper(125, ['PL-8904'], '5083-H116', '2026-06-19'),
  ],
);

const ALLOYS = ['6061-T6', '6005A-T61', '5083-H116', '5052-H32'];

export const PROCEDURES = list(
  ['Welding procedures as qualified. The papers are in the grey cabinet.'],
  [
    {
      id: 'WPS-11',
      process: 'GMAW',
      types: ['fillet', 'seam', 'flare'],
      base: ALLOYS,
      thickness: ['1/8 in', '3/4 in'],
      filler: ['ER5356'],
      positions: ['1F', '2F', '3F', '4F'],
      edition: 'AWS D1.2/D1.2M:2014',
    },
    {
      id: 'WPS-12',
      process: 'GMAW',
      types: ['square groove', 'bevel groove', 'V groove'],
      base: ALLOYS,
      thickness: ['1/8 in', '3/8 in'],
      filler: ['ER5356'],
      positions: ['1G', '2G', '3G'],
      edition: 'AWS D1.2/D1.2M:2014',
    },
    {
      id: 'WPS-14',
      process: 'GTAW',
      types: ['fillet', 'square groove'],
      base: ALLOYS,
      thickness: ['1/16 in', '1/4 in'],
      filler: ['ER4043', 'ER5356'],
      positions: ['1F', '2F', '3F', '1G'],
      edition: 'AWS D1.2/D1.2M:2014',
    },
  ],
);

const gmaw = (from: string, until: string): Rec => ({
  process: 'GMAW',
  positions: ['1F', '2F', '3F', '4F'],
  thickness: ['1/8 in', '3/4 in'],
  groups: ['22', '23'],
  from,
  until,
});
const gtaw = (from: string, until: string): Rec => ({
  process: 'GTAW',
  positions: ['1F', '2F', '3F', '1G'],
  thickness: ['1/16 in', '1/4 in'],
  groups: ['22', '23'],
  from,
  until,
});
const vt = (from: string, until: string): Rec => ({ method: 'VT', from, until });

const PEOPLE_RECORDS: readonly Rec[] = [
  {
    '#': 'Welders. Stamp first, as on the part.',
    id: 'K7',
    name: 'Corvina Thessel',
    role: 'welder',
    qualified: [
      gmaw('2025-06-09', '2027-06-09'),
      gtaw('2025-06-09', '2027-06-09'),
      gmaw('2026-05-18', '2028-05-18'),
      gtaw('2026-05-18', '2028-05-18'),
    ],
    note: 'plates again in May 2026, between the shells',
  },
  {
    id: 'M3',
    name: 'Osgood Farrowby',
    role: 'welder',
    qualified: [gmaw('2025-08-04', '2027-08-04'), gmaw('2026-05-18', '2028-05-18')],
  },
  {
    id: 'R2',
    name: 'Lindle Quarrenshaw',
    role: 'welder',
    qualified: [gmaw('2025-06-16', '2027-06-16'), gtaw('2025-06-16', '2027-06-16')],
  },
  {
    id: 'B9',
    name: 'Iskander Wroth-Pelly',
    role: 'welder',
    qualified: [gmaw('2025-09-01', '2027-09-01'), gmaw('2026-05-19', '2028-05-19')],
    note: 'MIG only',
  },
  {
    id: 'D4',
    name: 'Marigold Stenhouse-Ek',
    role: 'welder',
    qualified: [gmaw('2026-08-10', '2028-08-10')],
    note: 'passed the bend test on her second plate, August 2026',
  },
  {
    '#': ['', 'Inspectors. Nobody looks at their own beads.'],
    id: 'J2',
    name: 'Perpetua Vannock',
    role: 'inspector',
    qualified: [vt('2024-03-01', '2027-03-01'), { method: 'PT', from: '2024-03-01', until: '2027-03-01' }],
  },
  { id: 'J5', name: 'Emmerich Tallowby', role: 'inspector', qualified: [vt('2025-01-20', '2028-01-20')] },
  { '#': ['', 'The rest of the floor'], id: 'E1', name: 'Wilhelmina Oduya-Crake', role: 'electrician' },
  { id: 'F6', name: 'Tancred Holloway-Mbeki', role: 'plumber and gas fitter' },
  { id: 'S8', name: 'Juniper Askelund', role: 'skins and bonding' },
  { id: 'A1', name: 'Ottoline Brackenreed', role: 'shop administrator' },
];
export const PEOPLE = list(
  ['Who works here. Qualification dates as on the cards, not from memory.'],
  PEOPLE_RECORDS.map((one) => (one.qualified ? { block: true, ...one } : one)),
);

export const INSTRUMENTS = list(
  ['What we measure with. Nothing leaves the rack past its due date.'],
  [
    {
      id: 'SC-1',
      kind: 'axle scale',
      name: 'Gravelhithe portable pads, set of six',
      resolution: '20 lb',
      tolerance: '0.2 %',
      calibrated: '2025-08-18',
      due: '2026-08-18',
    },
    {
      id: 'SC-2',
      kind: 'axle scale',
      name: 'platform at the Nettlecombe grain yard',
      resolution: '20 lb',
      tolerance: '0.1 %',
      calibrated: '2026-03-02',
      due: '2027-03-02',
    },
    {
      id: 'PG-1',
      kind: 'pressure gauge',
      name: '0 to 5 psi, for gas',
      resolution: '0.05 psi',
      tolerance: '0.05 psi',
      calibrated: '2025-11-10',
      due: '2026-11-10',
    },
    {
      id: 'PG-2',
      kind: 'pressure gauge',
      name: '0 to 160 psi, water and air',
      resolution: '1 psi',
      tolerance: '1 psi',
      calibrated: '2025-11-10',
      due: '2026-11-10',
    },
    {
      id: 'PG-4',
      kind: 'pressure gauge',
      name: '0 to 15 in w.c., for appliances',
      resolution: '0.1 in w.c.',
      tolerance: '0.1 in w.c.',
      calibrated: '2025-11-10',
      due: '2026-11-10',
    },
    {
      id: 'PG-3',
      kind: 'pressure gauge',
      name: '0 to 4,000 psi, hydraulics',
      resolution: '25 psi',
      tolerance: '25 psi',
      calibrated: '2025-11-10',
      due: '2026-11-10',
    },
    {
      id: 'IR-1',
      kind: 'insulation tester',
      resolution: '0.1 Mohm',
      tolerance: '3 %',
      calibrated: '2026-01-12',
      due: '2027-01-12',
    },
    { id: 'DM-1', kind: 'multimeter', resolution: '0.01 ohm', tolerance: '0.5 %', calibrated: '2026-01-12', due: '2027-01-12' },
    {
      id: 'CT-1',
      kind: 'data cable tester',
      resolution: '0.1 ohm',
      tolerance: '1 %',
      calibrated: '2026-01-14',
      due: '2027-01-14',
    },
    { id: 'PT-1', kind: 'pull tester', resolution: '10 lbf', tolerance: '1 %', calibrated: '2025-10-06', due: '2026-10-06' },
  ],
);

export const STAGES = list(
  ['In build order, with what must be shown before each is signed off.'],
  [
    { id: 'subframe', name: 'Subframe and dampers', hold_points: ['welds accepted', 'clamps torqued', 'photos'] },
    { id: 'floor', name: 'Floor frame', hold_points: ['welds accepted', 'photos'] },
    { id: 'walls', name: 'Walls and openings', hold_points: ['welds accepted', 'openings square', 'photos'] },
    { id: 'roof', name: 'Roof trusses', hold_points: ['welds accepted', 'photos'] },
    { id: 'skin', name: 'Skins and caps', hold_points: ['bond coupons', 'photos'] },
    { id: 'services', name: 'Services, lining and ceiling', hold_points: ['tests passed before close-in', 'photos'] },
    { id: 'belly', name: 'Belly close-in', hold_points: ['photos before close-in', 'tests passed before close-in'] },
    { id: 'fitout', name: 'Fit-out', hold_points: ['function tests', 'rain test'] },
    { id: 'finished', name: 'Finished and weighed', hold_points: ['weighed', 'findings decided'] },
  ],
);

export const RULES = list(
  ['Figures that are the law’s, not ours. They differ by state, country and edition: whoever changes one writes the day.'],
  [
    {
      rule: 'weight.relabel',
      limit: '1.5 % of GVWR or 100 lb',
      citation: '49 CFR 571.110 S10 / 571.120 S10',
      edition: 'as read in 2026',
      verified: '2026-11-01',
    },
    {
      id: 'passenger-mass',
      rule: 'weight.over-rating',
      limit: '150 lb a belted seat',
      citation: '49 CFR 567.4(g)(3)',
      edition: 'as read in 2026',
      verified: '2026-11-01',
    },
  ],
);

export const SHOP = `# Ondervale Coachcraft: who we are and how we like our answers.
shop:
  name: Ondervale Coachcraft
  place: 4 Kiln Sidings, Ondervale
  contact: office@ondervale-coachcraft.example, bell at the blue door
units: both
paper: letter
weld_symbols: aws
limits:
  axle_margin: 3 %
  diagonal_difference: 1/8 in
  header_sag: 1/16 in
  truss_spacing: 18 in            # our grid is 15-1/2; end walls 18 to the corner
  cavity_fill: 40 %
  keep_apart:
    - {media: [gas, ac], distance: 2 in}
    - {media: [gas, dc], distance: 2 in}
    - {media: [dc, ac], share_zone: no}
    - {media: [data, ac], share_zone: no}
  voltage_drop: 3 %
  flatness: 3 mm
  late_entry: 14 d                # the office enters every other Friday
  unexplained_mass: 1 %
inspection: {primary: 100 %, secondary: 100 %}   # VT; a dye test where the engineer asks
`;
