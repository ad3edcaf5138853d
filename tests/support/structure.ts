/** Members, plates, panels, welds, clamps and openings from literals. */
import type { Vec3 } from '../../src/geometry/vector.js';
import type { Clamp, LineMember, Member, Opening, Panel, Weld } from '../../src/records/index.js';
import { record, section } from './build.js';

export const RT50 = section('RT50', { shape: 'rectangular tube', depthMm: 50, widthMm: 50, wallMm: 4, cornerRadiusMm: 0 });
export const sections = new Map([[RT50.id, RT50]]);

export const lineMember = (id: string, from: Vec3, to: Vec3, more: Partial<LineMember> & { stage?: string } = {}): Member => {
  const { stage, ...shape } = more;
  return {
    ...record(id),
    part: 'post',
    alloy: '6061-T6',
    stage,
    shape: { kind: 'line', section: 'RT50', from, to, rollDeg: 0, ...shape },
  };
};

export const plateMember = (id: string, outline: readonly Vec3[], thicknessMm: number, part = 'gusset'): Member => ({
  ...record(id),
  part,
  ...(part === 'gusset' ? { role: 'gusset' as const } : {}),
  alloy: '6061-T6',
  shape: { kind: 'plate', thicknessMm, outline },
});

/** A skin of 1 mm that stands lengthwise at a distance from the centre line. */
export const flatPanel = (id: string, y: number, more: Partial<Panel> = {}): Panel => ({
  ...record(id),
  panelKind: 'skin',
  alloy: '6061-T6',
  thicknessMm: 1,
  outline: [
    [0, y, -500],
    [3000, y, -500],
    [3000, y, 500],
    [0, y, 500],
  ],
  holes: [],
  ...more,
});

export const weld = (id: string, joins: Weld['joins'], more: Partial<Weld> = {}): Weld => ({
  ...record(id),
  joins,
  type: 'fillet',
  sizeMm: 6,
  lengthMm: 100,
  sides: 'arrow',
  process: 'GMAW',
  allRound: false,
  inspections: [],
  ...more,
});

export const clamp = (id: string, joins: readonly string[]): Clamp => ({
  ...record(id),
  clampKind: 'U-bolt',
  at: [0, 0, 0],
  joins,
});

/** A 2000 × 1000 opening in the left wall, sill at 500 mm. */
export const opening = (id: string, more: Partial<Opening> = {}): Opening => ({
  ...record(id),
  openingKind: 'slide-out',
  wall: 'left',
  sill: [
    [1000, -1200, 500],
    [3000, -1200, 500],
  ],
  widthMm: 2000,
  heightMm: 1000,
  gussets: [],
  ...more,
});
