import { day } from '../dates.js';
import type { Rec } from '../yaml.js';

/** A mistake put in on purpose: what the rule must find, and how the record was spoiled. */
export interface Plant {
  readonly rule: string;
  /** Ids that the finding names first. */
  readonly id: string;
  readonly file: string;
  readonly what: string;
  /** What must be looked at beside the records before it can be found. */
  readonly needs?: 'history' | 'photos';
  /** Spoils the records of a list: those of `file`, by list for a service. */
  readonly spoil: (records: Rec[], list: string) => Rec[];
}

const change =
  (id: string, with_: Rec) =>
  (records: Rec[]): Rec[] =>
    records.map((one) => (one.id === id ? prune({ ...one, ...with_ }) : one));
const prune = (record: Rec): Rec => Object.fromEntries(Object.entries(record).filter(([, value]) => value !== undefined));
const add =
  (list: string, more: readonly Rec[]) =>
  (records: Rec[], of: string): Rec[] =>
    of === list ? [...records, ...more] : records;
const both =
  (...all: readonly Plant['spoil'][]): Plant['spoil'] =>
  (records, list) =>
    all.reduce((some, spoil) => spoil(some, list), records);

const run = (
  id: string,
  circuit: string | undefined,
  from: string,
  to: string,
  via: readonly (readonly string[])[],
  more: Rec,
): Rec => ({
  id,
  ...(circuit ? { circuit } : {}),
  from,
  to,
  ...(via.length > 0 ? { via } : {}),
  ...more,
  supports: '15 in',
  tolerance: '12 mm',
  stage: 'services',
});

const MORE_SERVICES: readonly Plant[] = [
  {
    rule: 'service.protection-far',
    id: 'D-00/1',
    file: 'services/dc-house.yaml',
    what: 'main fuse 13 in from the battery, bare cable between',
    spoil: (records) => records,
  },
  {
    rule: 'test.missing',
    id: 'M-05',
    file: 'services/ac-mains.yaml',
    what: 'the block-heater cord was never tested',
    spoil: (records) => records,
  },
  {
    rule: 'service.ring',
    id: 'D-01/4',
    file: 'services/dc-house.yaml',
    what: 'the two front lights joined a second time',
    spoil: add('runs', [run('D-01/4', 'D-01', 'D-01/L1', 'D-01/L2', [], { date: '2026-10-21' })]),
  },
  {
    rule: 'service.joint-under-union',
    id: 'D-09/S2',
    file: 'services/dc-house.yaml',
    what: 'splice of the tank sender right under the kettle tee',
    spoil: both(
      add('nodes', [
        {
          id: 'D-09/S2',
          kind: 'splice',
          name: 'splice, second tank sender',
          circuit: 'D-09',
          tolerance: '12 mm',
          at: ['134 in', '-33-1/2 in', '2-1/2 in'],
        },
      ]),
      add('runs', [
        run(
          'D-09/4',
          'D-09',
          'D-09/S1',
          'D-09/S2',
          [
            ['88 in', '-22 in', '5.2 in'],
            ['100 in', '-33-1/2 in', '2-1/2 in'],
          ],
          { zones: ['TC-F', 'LL'], grommets: ['SF-L'], date: '2026-10-22' },
        ),
      ]),
    ),
  },
  {
    rule: 'service.wire-below-water',
    id: 'D-09/4',
    file: 'services/dc-house.yaml',
    what: 'and its wire under the water trunk',
    spoil: (records) => records,
  },
  {
    rule: 'service.node-twice',
    id: 'N-02/C9',
    file: 'services/data.yaml',
    what: 'the coupler of the screen recorded by two people',
    spoil: (records, list) => {
      const coupler = list === 'nodes' ? records.find((one) => one.id === 'N-02/C1') : undefined;
      return coupler ? [...records, { ...coupler, id: 'N-02/C9' }] : records;
    },
  },
  {
    rule: 'service.gas-joint-concealed',
    id: 'GA-T2',
    file: 'services/gas.yaml',
    what: 'a tee for a second heater up in the right lane',
    spoil: both(
      add('nodes', [
        {
          id: 'GA-T2',
          kind: 'fitting',
          name: 'tee, second heater',
          circuit: 'GA',
          tolerance: '12 mm',
          at: ['130 in', '26-1/2 in', '2 in'],
        },
      ]),
      add('runs', [
        run(
          'GA/5',
          'GA',
          'GA-T1',
          'GA-T2',
          [
            ['130 in', '21-1/2 in', '-1-1/2 in'],
            ['130 in', '26-1/2 in', '-1-1/2 in'],
          ],
          { zones: ['RL'], grommets: ['BP-R-1'], date: '2026-10-27' },
        ),
      ]),
    ),
  },
  {
    rule: 'service.gas-aluminium',
    id: 'GA/4',
    file: 'services/gas.yaml',
    what: 'aluminium tube from the shut-off to the heater',
    spoil: change('GA/4', { size: '3/8 in aluminium tube' }),
  },
  {
    rule: 'service.trough-undrained',
    id: 'TC-B',
    file: 'zones.yaml',
    what: 'no drain hole drilled in the rear trough',
    spoil: change('TC-B', { drains: undefined }),
  },
  {
    rule: 'service.zone-inside-out',
    id: 'CN-2',
    file: 'zones.yaml',
    what: 'a minus sign lost from one corner: no size across',
    spoil: add('', [
      {
        id: 'CN-2',
        name: 'raceway over the left sill',
        box: [
          ['60 in', '47 in', '12 in'],
          ['100 in', '47 in', '14 in'],
        ],
        concealed: false,
        carries: ['data'],
      },
    ]),
  },
];

const SERVICES: readonly Plant[] = [
  {
    rule: 'access.unreached',
    id: 'D-04/S2',
    file: 'services/dc-house.yaml',
    what: 'a splice up in the left wall, no panel anywhere near',
    spoil: both(
      add('nodes', [
        {
          id: 'D-04/S2',
          kind: 'splice',
          name: 'splice, red strip in the wall',
          circuit: 'D-04',
          tolerance: '12 mm',
          at: ['192-1/4 in', '-49 in', '60 in'],
        },
      ]),
      add('runs', [
        run(
          'D-04/4',
          'D-04',
          'D-04/S1',
          'D-04/S2',
          [
            ['192-1/4 in', '-4.6 in', '5.2 in'],
            ['192-1/4 in', '-4.6 in', '12 in'],
            ['192-1/4 in', '-46-1/2 in', '12-1/4 in'],
            ['192-1/4 in', '-49 in', '12-1/4 in'],
          ],
          { zones: ['TC-F', 'TC-B', 'WL-9'], date: '2026-10-21' },
        ),
      ]),
    ),
  },
  {
    rule: 'access.named-panel-does-not-reach',
    id: 'D-01/S1',
    file: 'services/dc-house.yaml',
    what: 'names AP-05, which is 14 ft aft',
    spoil: change('D-01/S1', { panel: 'AP-05' }),
  },
  {
    rule: 'access.blocked',
    id: 'D-08/S1',
    file: 'components.yaml',
    what: 'a ballast tray bolted right across the opening of AP-05',
    spoil: add('', [
      {
        id: 'CMP-06',
        name: 'ballast tray',
        mass: '64 lb',
        at: ['226 in', '0 in', '2.2 in'],
        size: ['30 in', '28 in', '1-1/2 in'],
        stage: 'services',
        basis: 'weighed',
        date: '2026-11-02',
      },
    ]),
  },
  {
    rule: 'access.moving-part',
    id: 'CMP-07',
    file: 'components.yaml',
    what: 'a step box in the room that the right drive tyres need',
    spoil: add('', [
      {
        id: 'CMP-08',
        name: 'heater flue, through the wall',
        mass: '3 lb',
        at: ['196 in', '-45 in', '40 in'],
        hot: 'dry',
        stage: 'services',
        basis: 'weighed',
        date: '2026-11-04',
      },
      {
        id: 'CMP-07',
        name: 'step box, empty',
        mass: '26 lb',
        at: ['168 in', '36 in', '-8 in'],
        size: ['12 in', '14 in', '8 in'],
        stage: 'services',
        basis: 'weighed',
        date: '2026-11-03',
      },
    ]),
  },
  {
    rule: 'access.hot-part',
    id: 'D-04/4',
    file: 'services/dc-house.yaml',
    what: 'the flue of a heater taken through the wall beside the wire of the lamps',
    spoil: (records) => records,
  },
  {
    rule: 'service.protection-too-large',
    id: 'D-05',
    file: 'services/dc-house.yaml',
    what: '100 A on 8 AWG',
    spoil: change('D-05', { protection: { kind: 'fuse', rating: '100 A', at: 'DCP' } }),
  },
  {
    rule: 'service.voltage-drop',
    id: 'D-06',
    file: 'services/dc-house.yaml',
    what: '14 AWG for 5 A over 14 ft',
    spoil: change('D-06', { conductor: { awg: 14, conductors: 2, rating: '105 C' } }),
  },
  {
    rule: 'service.protection-below-load',
    id: 'D-07',
    file: 'services/dc-house.yaml',
    what: '15 A fuse before an 18 A motor',
    spoil: change('D-07', { protection: { kind: 'fuse', rating: '15 A', at: 'DCP' } }),
  },
  {
    rule: 'service.no-protection',
    id: 'D-09',
    file: 'services/dc-house.yaml',
    what: 'no fuse on record for the pump',
    spoil: change('D-09', { protection: undefined }),
  },
  {
    rule: 'service.length-differs',
    id: 'D-05/1',
    file: 'services/dc-house.yaml',
    what: '22 ft installed over a way of 11 ft',
    spoil: change('D-05/1', { installed_length: '22 ft' }),
  },
  {
    rule: 'service.outside-envelope',
    id: 'D-03/3',
    file: 'services/dc-house.yaml',
    what: 'a way point typed in feet that was read in inches',
    spoil: change('D-03/3', {
      via: [
        ['83-3/4 ft', '-6.4 in', '5.2 in'],
        ['83-3/4 in', '-6.4 in', '12 in'],
      ],
    }),
  },
  {
    rule: 'service.cavity-full',
    id: 'CN-1',
    file: 'services/dc-house.yaml',
    what: 'three 4 AWG pairs pulled into a conduit of 1 in x 3/4 in',
    spoil: both(
      add('nodes', [
        { id: 'SP/A', kind: 'terminal', name: 'spare block, front', tolerance: '12 mm', at: ['60 in', '-20 in', '14 in'] },
        { id: 'SP/B', kind: 'terminal', name: 'spare block, middle', tolerance: '12 mm', at: ['100 in', '-20 in', '14 in'] },
      ]),
      add(
        'runs',
        [1, 2, 3].map((n) =>
          run(`SP/${n}`, undefined, 'SP/A', 'SP/B', [], {
            zones: ['CN-1'],
            conductor: { awg: 4, conductors: 2, rating: '105 C' },
            spare: true,
            marking: `SPARE ${n}`,
            date: '2026-10-21',
          }),
        ),
      ),
    ),
  },
  {
    rule: 'service.too-close',
    id: 'M-05/1',
    file: 'services/ac-mains.yaml',
    what: 'block-heater cord tied to the gas pipe',
    spoil: both(
      add('circuits', [
        {
          id: 'M-05',
          name: 'engine block heater',
          voltage: '120 V',
          load: '6 A',
          conductor: { awg: 12, conductors: 3, rating: '90 C' },
          protection: { kind: 'breaker', rating: '15 A', at: 'ACP' },
          marking: 'M-05',
        },
      ]),
      add('nodes', [
        {
          id: 'M-05/L',
          kind: 'load',
          name: 'engine block heater',
          circuit: 'M-05',
          load: '6 A',
          at: ['36 in', '10 in', '-2 in'],
        },
      ]),
      add('runs', [
        run(
          'M-05/1',
          'M-05',
          'ACP',
          'M-05/L',
          [
            ['50 in', '22-1/2 in', '13 in'],
            ['50 in', '22-1/2 in', '-1-1/2 in'],
            ['42 in', '22-1/2 in', '-1-1/2 in'],
          ],
          { date: '2026-10-15', grommets: ['BP-R-1'] },
        ),
      ]),
    ),
  },
  {
    rule: 'service.share-zone',
    id: 'TC-F',
    file: 'services/ac-mains.yaml',
    what: 'a mains run in the low-voltage trough',
    spoil: both(
      add('circuits', [
        {
          id: 'M-06',
          name: 'pier outlet',
          voltage: '120 V',
          load: '4 A',
          conductor: { awg: 12, conductors: 3, rating: '90 C' },
          protection: { kind: 'breaker', rating: '15 A', at: 'ACP' },
          marking: 'M-06',
        },
      ]),
      add('nodes', [
        {
          id: 'M-06/L',
          kind: 'load',
          name: 'outlet at the pier',
          circuit: 'M-06',
          load: '4 A',
          at: ['130-1/4 in', '13 in', '14 in'],
        },
      ]),
      add('runs', [
        run(
          'M-06/1',
          'M-06',
          'ACP',
          'M-06/L',
          [
            ['50 in', '13-1/2 in', '13 in'],
            ['50 in', '13-1/2 in', '4.8 in'],
            ['130-1/4 in', '13-1/2 in', '4.8 in'],
          ],
          { zones: ['TC-F'], date: '2026-10-15' },
        ),
      ]),
    ),
  },
  {
    rule: 'service.no-tolerance',
    id: 'M-01/J1',
    file: 'services/ac-mains.yaml',
    what: 'nobody wrote how well the place of the box is known',
    spoil: change('M-01/J1', { tolerance: undefined }),
  },
  {
    rule: 'service.no-grommet',
    id: 'N-01/2',
    file: 'services/data.yaml',
    what: 'out through the right rail without a grommet',
    spoil: change('N-01/2', {
      via: [
        ['96 in', '22 in', '5.8 in'],
        ['99-1/4 in', '22 in', '5.8 in'],
        ['99-1/4 in', '22 in', '12 in'],
      ],
      installed_length: '4 ft 2 in',
    }),
  },
  {
    rule: 'service.trapped-water',
    id: 'WC/1',
    file: 'services/water.yaml',
    what: 'a cap where the low-point drain should be',
    spoil: change('WC-D1', { kind: 'fitting', name: 'cap, drain to come', position: undefined }),
  },
  ...MORE_SERVICES,
];

const weld = (id: string, rule: string, what: string, file: string, with_: Rec): Plant => ({
  rule,
  id,
  file,
  what,
  spoil: change(id, with_),
});

export interface WeldChoice {
  readonly subframe: readonly string[];
  readonly floor: readonly string[];
  readonly walls: readonly string[];
  readonly roof: readonly string[];
  /** First knee weld, first joint of cross beam 3 with the left sill. */
  readonly knee: string;
  readonly apart: string;
  readonly gusset: string;
}

/** Changes the bonding log of one panel. */
const bond =
  (id: string, with_: Rec): Plant['spoil'] =>
  (records) =>
    records.map((one) => (one.id === id ? { ...one, bond: { ...(one.bond as Rec), ...with_ } } : one));

/** Changes the looks at one weld. */
const looks =
  (id: string, with_: (looks: readonly Rec[]) => readonly Rec[]): Plant['spoil'] =>
  (records) =>
    records.map((one) => (one.id === id ? { ...one, inspections: with_(one.inspections as readonly Rec[]) } : one));

const structure = (w: WeldChoice): readonly Plant[] => [
  {
    rule: 'member.length-differs',
    id: 'CB-05',
    file: 'members-floor.yaml',
    what: 'cut an inch short on paper',
    spoil: change('CB-05', { cut_length: '7 ft 11 in' }),
  },
  {
    rule: 'member.heat-missing',
    id: 'P-R-10',
    file: 'members-walls.yaml',
    what: 'offcut without its heat',
    spoil: change('P-R-10', { heat: undefined }),
  },
  {
    rule: 'member.alloy-swapped',
    id: 'G-02',
    file: 'members-walls.yaml',
    what: 'skin alloy on the card, heat of the gusset plate',
    spoil: change('G-02', { alloy: '5052-H32' }),
  },
  {
    rule: 'member.spacing',
    id: 'P-R-12',
    file: 'members-walls.yaml',
    what: 'post 11 of the right wall was left out, see plan.ts',
    spoil: (records) => records,
  },
  {
    rule: 'member.offcut-heat',
    id: 'P-L-04D',
    file: 'members-walls.yaml',
    what: 'cut from post 12, marked with the heat of the roof corners',
    spoil: change('P-L-04D', { heat: 'D44-0318', offcut_of: 'P-L-12' }),
  },
  {
    rule: 'member.certificate-missing',
    id: 'HD-DR-1',
    file: 'members-walls.yaml',
    what: 'only a test report on the order for heat H-6415',
    spoil: (records) => records,
  },
  {
    rule: 'member.bare-contact',
    id: 'UB-05',
    file: 'clamps.yaml',
    what: 'nobody wrote whether a pad lies under this U-bolt',
    spoil: change('UB-05', { isolator: undefined }),
  },
  {
    rule: 'member.clamp-torque-missing',
    id: 'UB-08',
    file: 'clamps.yaml',
    what: 'tightened and not written down',
    spoil: change('UB-08', { torque: undefined }),
  },
  weld(w.subframe[2] as string, 'weld.continuity-lapsed', 'R2 had not welded since the last shell', 'welds-subframe.yaml', {
    welder: 'R2',
  }),
  weld(w.knee, 'weld.fillet-small', '1/8 in on plate of 5/16 in', 'welds-floor.yaml', { size: '1/8 in' }),
  weld(w.apart, 'weld.members-apart', 'joins a beam to a post it never meets', 'welds-floor.yaml', {
    joins: ['CB-03', 'P-L-09'],
  }),
  {
    rule: 'weld.joint-unrecorded',
    id: 'CB-09',
    file: 'welds-floor.yaml',
    what: 'no card for the beam at the right sill',
    spoil: (records) => records.filter((one) => String(one.joins) !== 'SI-R,CB-09'),
  },
  weld(w.walls[4] as string, 'weld.welder-unqualified', 'D4 welded three weeks before her papers', 'welds-walls.yaml', {
    welder: 'D4',
  }),
  weld(w.walls[9] as string, 'weld.own-inspection', 'looked at by the welder', 'welds-walls.yaml', {}),
  weld(w.walls[14] as string, 'weld.not-inspected', 'no look on record', 'welds-walls.yaml', { inspections: undefined }),
  weld(w.roof[5] as string, 'weld.procedure-does-not-cover', 'ER4043 under a procedure for ER5356', 'welds-roof.yaml', {
    filler: 'ER4043',
  }),
  weld(w.gusset, 'weld.filler-unsuited', 'silicon rod on a 5083 gusset', 'welds-walls.yaml', {
    process: 'GTAW',
    procedure: 'WPS-14',
    filler: 'ER4043',
    welder: 'K7',
  }),
  {
    rule: 'weld.inspector-unqualified',
    id: w.walls[19] as string,
    file: 'welds-walls.yaml',
    what: 'dye test by J5, who holds VT alone',
    spoil: looks(w.walls[19] as string, (all) => [...all, { ...all[0], method: 'PT', by: 'J5' }]),
  },
  {
    rule: 'weld.inspection-order',
    id: w.walls[24] as string,
    file: 'welds-walls.yaml',
    what: 'looked at a month before it was made',
    spoil: looks(w.walls[24] as string, (all) => all.map((look) => ({ ...look, date: day(String(look.date), -30) }))),
  },
  weld(w.floor[12] as string, 'weld.off-joint', 'place typed a bay too far aft', 'welds-floor.yaml', {
    at: ['169 in', '-17 in', '6-3/4 in'],
  }),
  weld(w.roof[11] as string, 'weld.rejected-open', 'turned down, nothing after it', 'welds-roof.yaml', {}),
  {
    rule: 'opening.out-of-square',
    id: 'SO-1',
    file: 'openings.yaml',
    what: 'diagonals 3/8 in apart',
    spoil: change('SO-1', {
      measured: {
        top: '6 ft 2-1/2 in',
        bottom: '6 ft 2-1/2 in',
        front: '65-1/2 in',
        rear: '65-1/2 in',
        diagonals: ['99-3/8 in', '99 in'],
        header_sag: [{ at: '37 in', drop: '3/16 in' }],
      },
      gussets: ['G-01', 'G-02', 'G-03'],
    }),
  },
  { rule: 'opening.sag', id: 'SO-1', file: 'openings.yaml', what: 'header down 3/16 in', spoil: (records) => records },
  {
    rule: 'opening.gusset-missing',
    id: 'SO-1',
    file: 'openings.yaml',
    what: 'three gussets, four corners',
    spoil: (records) => records,
  },
  {
    rule: 'order.adhesive-expired',
    id: 'SK-L-04',
    file: 'panels-skin.yaml',
    what: 'lot ran out a week before',
    spoil: (records) =>
      records.map((one) =>
        one.id === 'SK-L-04' ? { ...one, fixing: { ...(one.fixing as Rec), lot: 'B-4488', expires: '2026-09-30' } } : one,
      ),
  },
  {
    rule: 'order.photo-after-close-in',
    id: 'M-01/1',
    file: 'photos/photos.yaml',
    what: 'right lane photographed three days after its belly panel went on',
    spoil: change('PH-008', { taken: '2026-11-02' }),
  },
  {
    rule: 'order.test-after-close-in',
    id: 'D-01/1',
    file: 'tests.yaml',
    what: 'trough tested a week after it was closed',
    spoil: change('TS-202', { date: '2026-11-16' }),
  },
  {
    rule: 'order.instrument-out-of-calibration',
    id: 'TS-205',
    file: 'tests.yaml',
    what: 'gauge two days past its date',
    spoil: change('TS-205', { date: '2026-11-12' }),
  },
  {
    rule: 'order.not-verified',
    id: 'WC/1',
    file: 'tests.yaml',
    what: 'so no test of the left lane passes',
    spoil: (records) => records,
  },
  {
    rule: 'test.failed',
    id: 'TS-206',
    file: 'tests.yaml',
    what: 'gas lost 0.4 psi',
    spoil: change('TS-206', { end: '2.60 psi' }),
  },
  {
    rule: 'test.not-verified',
    id: 'TS-207',
    file: 'tests.yaml',
    what: '"OK" and no value',
    spoil: add('', [
      {
        id: 'TS-207',
        kind: 'continuity',
        of: ['GA'],
        limit: '0.5 ohm',
        by: 'E1',
        date: '2026-11-12',
        stage: 'services',
        note: 'OK',
      },
    ]),
  },
  {
    rule: 'record.repeats',
    id: 'TS-208',
    file: 'tests.yaml',
    what: 'gas test pasted from OV-021 with its date',
    spoil: add('', [
      {
        id: 'TS-208',
        kind: 'drop',
        of: ['GA'],
        limit: '0 psi',
        start: '3.00 psi',
        end: '3.00 psi',
        start_temperature: '14 C',
        end_temperature: '14 C',
        duration: '15 min',
        instrument: 'PG-1',
        by: 'F6',
        date: '2026-04-02',
        stage: 'services',
      },
    ]),
  },
  {
    rule: 'record.late-entry',
    id: 'W-0030',
    file: 'welds-floor.yaml',
    what: 'the card was found six weeks later, see history.yaml',
    needs: 'history',
    spoil: (records) => records,
  },
  {
    rule: 'record.photo-twice',
    id: 'PH-009',
    file: 'photos/photos.yaml',
    what: 'picture of the third truss sent round and filed as the fifth',
    needs: 'photos',
    spoil: (records) => records,
  },
  {
    rule: 'finding.undecided',
    id: 'NC-02',
    file: 'findings.yaml',
    what: 'raised and left',
    spoil: add('', [
      {
        block: true,
        id: 'NC-02',
        raised: '2026-09-03',
        of: ['P-R-10'],
        description: 'post leans 1/4 in aft at the top, expected plumb',
      },
    ]),
  },
  {
    rule: 'finding.closed-over',
    id: 'NC-03',
    file: 'findings.yaml',
    what: 'belly went on over a pipe that was to be made again',
    spoil: add('', [
      {
        block: true,
        id: 'NC-03',
        raised: '2026-11-04',
        of: ['WC/2'],
        description: 'pipe rubs on the edge of the outrigger, expected a clip and 1/2 in of air',
        decision: 'rework',
        reason: 'move the clip to the far side',
        approved_by: 'J5',
      },
    ]),
  },
  {
    rule: 'panel.bond-dew-point',
    id: 'SK-L-02',
    file: 'panels-skin.yaml',
    what: 'sheet came in from the yard, 2 K over the dew point',
    spoil: bond('SK-L-02', { surface: '10 C' }),
  },
  {
    rule: 'panel.bond-time',
    id: 'SK-L-05',
    file: 'panels-skin.yaml',
    what: 'bead open for 34 of 30 minutes',
    spoil: bond('SK-L-05', { open_time: '34 min' }),
  },
  {
    rule: 'panel.not-flat',
    id: 'SK-L-03',
    file: 'panels-skin.yaml',
    what: 'one corner half an inch out',
    spoil: (records) =>
      records.map((one) =>
        one.id === 'SK-L-03'
          ? {
              ...one,
              outline: (one.outline as (readonly string[])[]).map((corner, i) =>
                i === 2 ? [corner[0], '-49-1/2 in', corner[2]] : corner,
              ),
            }
          : one,
      ),
  },
];

const WEIGHT: readonly Plant[] = [
  {
    rule: 'weight.ticket-not-verified',
    id: 'T-2',
    file: 'weights.yaml',
    what: 'no condition on the ticket',
    spoil: change('T-2', { condition: undefined }),
  },
  {
    rule: 'weight.scale-out-of-calibration',
    id: 'T-3',
    file: 'weights.yaml',
    what: 'own pads, four weeks past their date',
    spoil: change('T-3', { scale: 'SC-1', ticket: '26-109' }),
  },
  { rule: 'weight.unexplained', id: 'T-1', file: 'weights.yaml', what: 'a pad read 600 lb high', spoil: (records) => records },
  {
    rule: 'weight.tyres-below-gawr',
    id: 'steer',
    file: 'shell.yaml',
    what: 'load index 140 under an axle of 12,000 lb',
    spoil: (records) => records,
  },
  {
    rule: 'shell.vin-check-digit',
    id: 'OV-024',
    file: 'shell.yaml',
    what: 'two characters exchanged when it was typed',
    spoil: (records) => records,
  },
];

const PAPER: readonly Plant[] = [
  {
    rule: 'signoff.lapsed',
    id: 'floor/inspector/2026-07-20',
    file: 'signoffs.yaml',
    what: 'another sheet of plywood went on after the floor was signed off',
    spoil: (records) => records,
  },
];

export const planted = (welds: WeldChoice): readonly Plant[] => [...SERVICES, ...structure(welds), ...WEIGHT, ...PAPER];
