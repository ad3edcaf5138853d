import { outline } from '../inches.js';
import type { Rec } from '../yaml.js';
import { type Access, flatXY, flatXZ, flatYZ, holesOf } from './sheets.js';
import { type Grid, letterOf, type Side, signOf, two } from './types.js';

/** Sheets screwed or riveted on: belly panels, ceiling, wall lining, caps. Each list in its own file. */
export interface Lining {
  readonly grid: Grid;
  readonly access: readonly Access[];
  readonly date: (panel: string) => string | undefined;
}

export const BELLY_Z = 0.45;
export const CENTRE_BELLY_Z = 0.7;
export const CEILING_Z = 90.95;
export const LINING_Y = 47.9;

const dated = (job: Lining, id: string): { readonly date?: string } => {
  const date = job.date(id);
  return date ? { date } : {};
};

export function belly(
  job: Lining,
  id: string,
  x: readonly [number, number],
  y: readonly [number, number],
  z: number,
  name: string,
): Rec {
  return {
    id,
    kind: 'belly',
    name,
    facing: 'down',
    alloy: '3003-H14',
    thickness: '0.080 in',
    stage: 'belly',
    ...dated(job, id),
    fixing: {
      method: 'screws',
      count: 2 * Math.ceil((x[1] - x[0]) / 6) + 6,
      driver: 'T25',
      sealant: 'butyl tape',
      torque: '4 N.m',
    },
    outline: outline(flatXY(x[0], x[1], y[0], y[1], z)),
    ...holesOf(id, job.access),
  };
}

export function ceiling(job: Lining, seams: readonly number[]): readonly Rec[] {
  const { grid } = job;
  const edge = (station: number): number =>
    station === 0 ? grid.plan.x0 + 2 : station === grid.plan.bays ? grid.rear - 2 : grid.x(station);
  return seams.slice(1).map((to, i): Rec => {
    const id = `CL-${i + 1}`;
    return {
      id,
      kind: 'interior',
      name: `ceiling panel ${i + 1}`,
      facing: 'down',
      alloy: '3003-H14',
      thickness: '0.063 in',
      stage: 'services',
      ...dated(job, id),
      fixing: { method: 'screws', count: 18, driver: 'T20', torque: '2 N.m' },
      outline: outline(flatXY(edge(seams[i] as number), edge(to), -47, 47, CEILING_Z)),
      ...holesOf(id, job.access),
    };
  });
}

export function lining(job: Lining, side: Side, spans: readonly (readonly [number, number])[]): readonly Rec[] {
  const { grid } = job;
  const { plan } = grid;
  const y = signOf(side) * LINING_Y;
  return spans.map(([from, to], i): Rec => {
    const id = `IP-${letterOf(side)}-${i + 1}`;
    // Clear of the corner posts, and of the gussets at the slide-out’s jambs.
    const start = from === 0 ? plan.x0 + 2 : grid.x(from) + (plan.slide.side === side && from === plan.slide.to ? 2 : 0);
    const end = to === plan.bays ? grid.rear - 2 : grid.x(to) - (plan.slide.side === side && to === plan.slide.from ? 2 : 0);
    const cut = plan.windows
      .filter((gap) => gap.side === side && gap.from >= from && gap.to <= to)
      .map((gap) => flatXZ(grid.x(gap.from) + 1.5, grid.x(gap.to) - 1.5, gap.bottom, gap.top, y));
    return {
      id,
      kind: 'interior',
      name: `wall lining ${side} ${i + 1}`,
      facing: side === 'left' ? 'right' : 'left',
      alloy: '3003-H14',
      thickness: '0.050 in',
      stage: 'services',
      ...dated(job, id),
      fixing: { method: 'rivets', count: 32, driver: '5/32 drill' },
      outline: outline(flatXZ(start, end, 13, 90, y)),
      ...holesOf(id, job.access, cut),
    };
  });
}

/** Formed nose over the front wall and tail cap at the rear, in flat facets. */
export function caps(grid: Grid, date: (id: string) => string | undefined): readonly Rec[] {
  const nose = grid.plan.x0 - 6;
  const facets: readonly (readonly [string, string, 'front' | 'rear', number])[] = [
    ['CP-F', 'front cap', 'front', nose],
    ['CP-B', 'rear cap', 'rear', grid.rear + 1.5],
  ];
  return facets.flatMap(([id, name, facing, x]) =>
    [-1, 0, 1].map((part, i): Rec => {
      const own = `${id}-${two(i + 1)}`;
      const went = date(own);
      return {
        id: own,
        kind: 'cap',
        name: `${name} ${['left', 'middle', 'right'][i]}`,
        facing,
        alloy: '3003-H14',
        thickness: '0.125 in',
        stage: 'skin',
        ...(went ? { date: went } : {}),
        fixing: { method: 'rivets', count: 44, driver: '3/16 drill', sealant: 'polyurethane' },
        outline: outline(flatYZ(part * 32 - 16, part * 32 + 16, 86, 98, x)),
      };
    }),
  );
}
