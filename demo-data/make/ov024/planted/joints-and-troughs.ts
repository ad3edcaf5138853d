import { add, both, change, type Plant, run } from './plant.js';

/** Joints that lie badly, gas where it may not be, troughs and cavities. */
export const JOINTS_AND_TROUGHS: readonly Plant[] = [
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
          { zones: ['RL'], grommets: ['BP-R-1'], sealed: ['BP-R-1'], date: '2026-10-27' },
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
