import type { P } from '../inches.js';
import { stations } from './subframe.js';
import { type Grid, IN, type Line, OUT, type Part, signOf, two, Z } from './types.js';

const base = { stage: 'roof', file: 'roof', alloy: '6061-T6' } as const;
/** Radius of the corner extrusion, in. */
export const CORNER = 6;
const EDGE = OUT - CORNER;
const BOTTOM = 91.75;
const TOP = Z.roof - 0.75;
export const WEBS = [-33, -22, -11, 0, 11, 22, 33];

/** Corner radius extrusions along both sides, end rails between them, trusses on the posts’ grid, trimmers for roof units. */
export function roof(grid: Grid): readonly Part[] {
  const { plan } = grid;
  const mid = (Z.plateTop + Z.roof) / 2;
  // The extrusion’s centre lies inward and down: the left one is drawn from the rear so that its round side looks out.
  const edge = (id: string, part: string, sign: -1 | 1): Line => {
    const y = sign * (OUT - CORNER / 2);
    const ends: readonly [P, P] = [
      [plan.x0, y, mid],
      [grid.rear, y, mid],
    ];
    const [from, to] = sign < 0 ? [ends[1], ends[0]] : ends;
    return { id, part, ...base, alloy: '6005A-T61', section: 'CR6x5/32', from, to };
  };
  const endRail = (id: string, part: string, x: number): Line => ({
    id,
    part,
    ...base,
    section: 'RT6x2x3/16',
    from: [x, -EDGE, mid],
    to: [x, EDGE, mid],
  });
  return [
    edge('CR-L', 'roof corner radius left', -1),
    edge('CR-R', 'roof corner radius right', 1),
    endRail('FT-F', 'front roof rail', plan.x0 + 1),
    endRail('FT-B', 'rear roof rail', grid.rear - 1),
    ...(plan.trusses ?? stations(1, plan.bays - 1)).flatMap((i) => truss(grid, i)),
    ...trimmers(grid),
  ];
}

function truss(grid: Grid, i: number): readonly Line[] {
  const x = grid.x(i);
  const n = two(i);
  const tube = (id: string, part: string, section: string, from: P, to: P): Line => ({
    id: `T${n}-${id}`,
    part,
    ...base,
    section,
    from,
    to,
  });
  const web = 'RT1x1x1/8';
  return [
    tube('BC', 'truss bottom chord', 'RT1-1/2x1-1/2x1/8', [x, -IN, BOTTOM], [x, IN, BOTTOM]),
    tube('TC', 'truss top chord', 'RT1-1/2x1-1/2x1/8', [x, -EDGE, TOP], [x, EDGE, TOP]),
    ...WEBS.map((y, k) => tube(`W${k + 1}`, 'truss web', web, [x, y, BOTTOM + 0.75], [x, y, TOP - 0.75])),
    ...([-1, 1] as const).map((sign) =>
      tube(sign < 0 ? 'DL' : 'DR', 'truss end diagonal', web, [x, sign * 42, BOTTOM + 0.75], [x, sign * 36, TOP - 0.75]),
    ),
  ];
}

function trimmers(grid: Grid): readonly Line[] {
  return grid.plan.roofUnits.flatMap((bay) =>
    (['left', 'right'] as const).map(
      (which): Line => ({
        id: `TM-${two(bay)}${which === 'left' ? 'L' : 'R'}`,
        part: 'trimmer for roof unit',
        ...base,
        section: 'RT1-1/2x1-1/2x1/8',
        from: [grid.x(bay) + 0.75, signOf(which) * 7.75, TOP],
        to: [grid.x(bay + 1) - 0.75, signOf(which) * 7.75, TOP],
      }),
    ),
  );
}
