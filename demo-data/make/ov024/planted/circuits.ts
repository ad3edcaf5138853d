import { add, both, change, type Plant, run } from './plant.js';

/** Fuses, wires, lengths and conduits. */
export const CIRCUITS: readonly Plant[] = [
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
];
