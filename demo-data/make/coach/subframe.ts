import type { P } from '../inches.js';
import { type Grid, IN, type Line, OUT, type Part, type Plate, two, Z } from './types.js';

const RAIL_Y = 17;
const RAIL_HALF = 1.5;

/** Rails on dampers over the chassis rails, low tubes between them, cross beams over them, perimeter sills, knees, stringers. */
export function subframe(grid: Grid): readonly Part[] {
  const { plan } = grid;
  const rail = (id: string, part: string, y: number): Line => ({
    id,
    part,
    stage: 'subframe',
    file: 'subframe',
    section: 'RT6x3x5/16',
    alloy: '6061-T6',
    from: [plan.railFront, y, (Z.damper + Z.rail) / 2],
    to: [grid.rear, y, (Z.damper + Z.rail) / 2],
  });
  const tubes = plan.tubeBays.map((bay, i): Line => {
    const x = grid.mid(bay);
    return {
      id: `SX-${two(i + 1)}`,
      part: 'subframe cross tube',
      stage: 'subframe',
      file: 'subframe',
      section: 'RT2-1/2x2x1/4',
      alloy: '6061-T6',
      from: [x, -(RAIL_Y - RAIL_HALF), 2],
      to: [x, RAIL_Y - RAIL_HALF, 2],
    };
  });
  return [rail('SF-L', 'subframe rail left', -RAIL_Y), rail('SF-R', 'subframe rail right', RAIL_Y), ...tubes, ...knees(grid)];
}

function knees(grid: Grid): readonly Plate[] {
  return grid.plan.knees.flatMap((station) =>
    ([-1, 1] as const).map((sign): Plate => {
      const inner = sign * (RAIL_Y + RAIL_HALF);
      const corner = (y: number, z: number): P => [grid.x(station), y, z];
      return {
        id: `KG-${two(station)}${sign < 0 ? 'L' : 'R'}`,
        part: 'knee gusset, rail to cross beam',
        stage: 'floor',
        file: 'floor',
        alloy: '5083-H116',
        thickness: 5 / 16,
        outline: [corner(inner, Z.rail), corner(inner + sign * 6, Z.rail), corner(inner, Z.rail - 5)],
      };
    }),
  );
}

export function floor(grid: Grid): readonly Part[] {
  const { plan } = grid;
  const z = (Z.rail + Z.beam) / 2;
  const base = { stage: 'floor', file: 'floor', alloy: '6061-T6' } as const;
  const beams = stations(1, plan.bays - 1).map(
    (i): Line => ({
      id: `CB-${two(i)}`,
      part: 'cross beam',
      ...base,
      section: 'I4x3',
      from: [grid.x(i), -IN, z],
      to: [grid.x(i), IN, z],
    }),
  );
  const sillZ = (Z.rail + Z.sill) / 2;
  const sill = (id: string, part: string, from: P, to: P): Line => ({ id, part, ...base, section: 'RT4-1/2x2x3/16', from, to });
  const front = plan.x0 + 1;
  const rear = grid.rear - 1;
  const sills = [
    sill('SI-F', 'front sill', [front, -OUT, sillZ], [front, OUT, sillZ]),
    sill('SI-L', 'side sill left', [front + 1, -OUT + 1, sillZ], [rear - 1, -OUT + 1, sillZ]),
    sill('SI-R', 'side sill right', [front + 1, OUT - 1, sillZ], [rear - 1, OUT - 1, sillZ]),
    sill('SI-B', 'rear sill', [rear, -OUT, sillZ], [rear, OUT, sillZ]),
  ];
  const stringers = plan.stringerBays.flatMap((bay) =>
    plan.stringerLines.map(
      (y, i): Line => ({
        id: `ST-${two(bay)}${'ABCDEF'[i]}`,
        part: 'floor stringer',
        ...base,
        section: 'RT4x2x3/16',
        from: [grid.x(bay) + 1.5, y, z],
        to: [grid.x(bay + 1) - 1.5, y, z],
      }),
    ),
  );
  return [...sills, ...beams, ...stringers];
}

export const stations = (from: number, to: number): readonly number[] =>
  Array.from({ length: to - from + 1 }, (_, i) => from + i);
