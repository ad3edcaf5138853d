import { add, both, change, type Plant, run } from './plant.js';

/** What no hand reaches, what moves and what is hot. */
export const ACCESS: readonly Plant[] = [
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
];
