import type { P } from '../inches.js';
import { outline } from '../inches.js';
import type { Rec } from '../yaml.js';
import { type Access, flatXY, flatXZ, flatYZ, holesOf } from './sheets.js';
import { type Gap, type Grid, letterOf, OUT, type Side, signOf, two, Z } from './types.js';

/** Middle plane of a skin of 0.100 in on the posts. */
export const SKIN_Y = OUT + 0.05;
export const SKIRT_BOTTOM = 0.4;

export interface Bonding {
  readonly adhesive: string;
  readonly lot: string;
  readonly expires: string;
  readonly open: string;
  readonly cure: string;
  readonly coupon: string;
}

export interface SkinJob {
  readonly grid: Grid;
  /** Stations at which the sheets of each side meet. */
  readonly seams: readonly number[];
  /** Along the coach, where skirts hang: [from, to] pairs, in. */
  readonly skirts: readonly (readonly [number, number])[];
  /** Day that sheet number n went on, with the day’s air. */
  readonly bonded: (n: number) => {
    readonly date: string;
    readonly bonding: Bonding;
    readonly surface: string;
    readonly air: string;
    readonly humidity: string;
  };
  /** Number of sheets on so far; all where not given. */
  readonly until?: number;
}

/** Bonded side skins, skirts, front and rear skins, roof sheets: in the order in which they go on. */
export function skins(job: SkinJob): readonly Rec[] {
  const sheets = [
    ...sideSheets(job, 'left'),
    ...sideSheets(job, 'right'),
    ...endSheets(job.grid),
    ...roofSheets(job.grid),
    ...skirtSheets(job),
  ];
  return sheets.slice(0, job.until ?? sheets.length).map((sheet, i) => {
    const { date, bonding, surface, air, humidity } = job.bonded(i);
    return {
      ...sheet,
      alloy: '5052-H32',
      thickness: '0.100 in',
      stage: 'skin',
      date,
      fixing: { method: 'bonded', adhesive: bonding.adhesive, lot: bonding.lot, expires: bonding.expires, applied: date },
      bond: {
        surface,
        air,
        humidity,
        open_time: bonding.open,
        open_time_limit: '30 min',
        cure: bonding.cure,
        coupon: bonding.coupon,
      },
    };
  });
}

function sideSheets({ grid, seams }: SkinJob, side: Side): readonly Rec[] {
  const { plan } = grid;
  const y = signOf(side) * SKIN_Y;
  const letter = letterOf(side);
  const gaps = [...plan.doors, ...plan.windows].filter((gap) => gap.side === side);
  const edge = (station: number): number => (station === 0 ? plan.x0 : station === plan.bays ? grid.rear : grid.x(station));
  let n = 0;
  const sheet = (from: number, to: number, z0: number, z1: number, note?: string): Rec => {
    const inside = gaps.filter((gap) => gap.from >= from && gap.to <= to && z1 - z0 > 20);
    const cut = inside.map((gap): readonly P[] => flatXZ(grid.x(gap.from) + 1.5, grid.x(gap.to) - 1.5, gap.bottom, gap.top, y));
    n += 1;
    return {
      id: `SK-${letter}-${two(n)}`,
      kind: 'skin',
      facing: side,
      outline: outline(flatXZ(edge(from), edge(to), z0, z1, y)),
      ...holesOf('', [], cut),
      ...(note ? { note } : {}),
    };
  };
  return seams.slice(1).flatMap((to, i) => {
    const from = seams[i] as number;
    const open: Gap | undefined =
      plan.slide.side === side && plan.slide.from < to && plan.slide.to > from ? plan.slide : undefined;
    if (!open) return [sheet(from, to, Z.rail, Z.plateTop)];
    return [
      sheet(from, to, Z.rail, open.bottom, 'strip under the slide-out'),
      sheet(from, to, open.top, Z.plateTop, 'over the slide-out header'),
    ];
  });
}

function endSheets(grid: Grid): readonly Rec[] {
  const { plan } = grid;
  const x = [plan.x0 - 0.05, grid.rear + 0.05];
  const cols = [-50, -15.5, 15.5, 50];
  return (['F', 'B'] as const).flatMap((letter, end) =>
    [0, 1, 2].map((i): Rec => {
      const door = letter === 'B' && i === 1 && plan.rearDoor;
      return {
        id: `SK-${letter}-${two(i + 1)}`,
        kind: 'skin',
        facing: letter === 'F' ? 'front' : 'rear',
        outline: outline(flatYZ(cols[i] as number, cols[i + 1] as number, Z.rail, Z.plateTop, x[end] as number)),
        ...holesOf('', [], door ? [flatYZ(-14, 14, Z.sill, 84.75, x[end] as number)] : []),
      };
    }),
  );
}

function roofSheets(grid: Grid): readonly Rec[] {
  const { plan } = grid;
  const z = Z.roof + 0.05;
  const seams = [0, ...Array.from({ length: Math.ceil(plan.bays / 3) - 1 }, (_, i) => 3 * (i + 1)), plan.bays];
  const edge = (station: number): number => (station === 0 ? plan.x0 : station === plan.bays ? grid.rear : grid.x(station));
  return seams.slice(1).map((to, i): Rec => {
    const from = seams[i] as number;
    const units = plan.roofUnits
      .filter((bay) => bay >= from && bay < to)
      .map((bay) => flatXY(grid.x(bay) + 0.75, grid.x(bay + 1) - 0.75, -7, 7, z));
    return {
      id: `RF-${two(i + 1)}`,
      kind: 'roof',
      facing: 'up',
      outline: outline(flatXY(edge(from), edge(to), -44, 44, z)),
      ...holesOf('', [], units),
    };
  });
}

function skirtSheets({ skirts }: SkinJob): readonly Rec[] {
  return (['left', 'right'] as const).flatMap((side) =>
    skirts.map(
      ([from, to], i): Rec => ({
        id: `SK-${letterOf(side)}-S${i + 1}`,
        kind: 'skin',
        name: `skirt ${side} ${i + 1}`,
        facing: side,
        outline: outline(flatXZ(from, to, SKIRT_BOTTOM, Z.rail, signOf(side) * SKIN_Y)),
      }),
    ),
  );
}

export type { Access };
