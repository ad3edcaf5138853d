import { change, type Plant } from './plant.js';

/** An opening out of square. */
export const OPENINGS: readonly Plant[] = [
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
];
