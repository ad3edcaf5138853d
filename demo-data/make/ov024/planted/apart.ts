import { add, both, change, type Plant, run } from './plant.js';

/** What must keep apart, pass through with a grommet, and drain. */
export const APART: readonly Plant[] = [
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
    rule: 'service.no-sealant',
    id: 'M-05/1',
    file: 'services/ac-mains.yaml',
    what: 'the block-heater cord in through the belly, grommet in, no sealant',
    spoil: (records) => records,
  },
  {
    rule: 'service.trapped-water',
    id: 'WC/1',
    file: 'services/water.yaml',
    what: 'a cap where the low-point drain should be',
    spoil: change('WC-D1', { kind: 'fitting', name: 'cap, drain to come', position: undefined }),
  },
];
