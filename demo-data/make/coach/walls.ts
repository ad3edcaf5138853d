import type { P } from '../inches.js';
import { stations } from './subframe.js';
import { type Gap, type Grid, IN, type Line, letterOf, OUT, type Part, type Plate, type Side, signOf, two, Z } from './types.js';

const base = { stage: 'walls', file: 'walls' } as const;
const MID = (OUT + IN) / 2;
const HALF_POST = 1.5;

/** Posts, headers, window rails, belts, corner posts, top plates, and the plates in the slide-out’s corners. */
export function walls(grid: Grid): readonly Part[] {
  return [...side(grid, 'left'), ...side(grid, 'right'), ...ends(grid), ...gussets(grid)];
}

interface Piece {
  readonly id: string;
  readonly part: string;
  readonly section: string;
  readonly bottom: number;
  readonly top: number;
}

function side(grid: Grid, which: Side): readonly Part[] {
  const { plan } = grid;
  const y = signOf(which) * MID;
  const letter = letterOf(which);
  const gaps = [plan.slide, ...plan.doors, ...plan.windows].filter((gap) => gap.side === which);
  const posts = stations(1, plan.bays - 1).flatMap((i) =>
    pieces(i, letter, gaps, plan.slide).map(
      (piece): Line => ({
        id: piece.id,
        part: piece.part,
        ...base,
        section: piece.section,
        alloy: piece.section.startsWith('DH') ? '6005A-T61' : '6061-T6',
        from: [grid.x(i), y, piece.bottom],
        to: [grid.x(i), y, piece.top],
      }),
    ),
  );
  const rails = gaps.flatMap((gap) => railsOf(grid, gap, y, gap === plan.slide));
  const belts = plan.belts[which].map((bay): Line => {
    const from = bay === 0 ? plan.x0 + 1.5 : grid.x(bay) + HALF_POST;
    const to = bay === plan.bays - 1 ? grid.rear - 1.5 : grid.x(bay + 1) - HALF_POST;
    const beltY = signOf(which) * (OUT - 0.75);
    return {
      id: `BR-${letter}-${two(bay)}`,
      part: 'belt rail',
      ...base,
      section: 'RT1-1/2x1-1/2x1/8',
      alloy: '6061-T6',
      from: [from, beltY, 40],
      to: [to, beltY, 40],
    };
  });
  return [...posts, ...rails, ...belts, topPlate(grid, which)];
}

/** One post, or its pieces below and above what is cut into it. */
function pieces(i: number, letter: string, gaps: readonly Gap[], slide: Gap): readonly Piece[] {
  const jamb = gaps.some((gap) => gap === slide && (gap.from === i || gap.to === i));
  const section = jamb ? 'RT3x2x1/4' : 'DH3x2x5/32';
  const cut = gaps.find((gap) => gap.from < i && i < gap.to);
  const id = `P-${letter}-${two(i)}`;
  if (!cut) return [{ id, part: jamb ? 'slide-out jamb post' : 'wall post', section, bottom: Z.sill, top: Z.plate }];
  const top = { id: `${id}U`, part: 'cripple post over opening', section, bottom: cut.top + headerDepth(cut), top: Z.plate };
  if (cut.bottom - 2 <= Z.sill + 0.01) return [top];
  return [{ id: `${id}D`, part: 'cripple post under opening', section, bottom: Z.sill, top: cut.bottom - 2 }, top];
}

const headerDepth = (gap: Gap): number => (gap.id.startsWith('SO') ? 6 : gap.id.startsWith('DR') ? 3 : 2);

function railsOf(grid: Grid, gap: Gap, y: number, slide: boolean): readonly Line[] {
  const [from, to] = [grid.x(gap.from) + HALF_POST, grid.x(gap.to) - HALF_POST];
  const deep = headerDepth(gap);
  const line = (id: string, part: string, section: string, z: number): Line => ({
    id,
    part,
    ...base,
    section,
    alloy: '6061-T6',
    from: [from, y, z],
    to: [to, y, z],
  });
  const number = gap.id.replace(/^[A-Z]+-/u, '');
  const head = slide ? 'RT6x2x1/4' : deep === 3 ? 'RT3x2x3/16' : 'RT2x2x3/16';
  const header = line(
    `HD-${gap.id}`,
    slide ? 'slide-out header' : deep === 3 ? 'door header' : 'window header',
    head,
    gap.top + deep / 2,
  );
  if (gap.id.startsWith('DR')) return [header];
  return [header, line(`SL-${gap.id}`, slide ? 'slide-out sill' : `window sill ${number}`, 'RT2x2x3/16', gap.bottom - 1)];
}

function topPlate(grid: Grid, which: Side): Line {
  const y = signOf(which) * MID;
  const z = (Z.plate + Z.plateTop) / 2;
  return {
    id: `TP-${letterOf(which)}`,
    part: `wall top plate ${which}`,
    ...base,
    section: 'RT2x2x3/16',
    alloy: '6061-T6',
    from: [grid.plan.x0 + 1.5, y, z],
    to: [grid.rear - 1.5, y, z],
  };
}

const END_POSTS = [-31, -15.5, 0, 15.5, 31];

function ends(grid: Grid): readonly Line[] {
  const end = (letter: 'F' | 'B', x: number, corner: number): readonly Line[] => {
    const door = letter === 'B' && grid.plan.rearDoor;
    const posts = END_POSTS.map((y, i): Line => {
      const cut = door && y === 0;
      const bottom = cut ? 87.75 : Z.sill;
      return {
        id: `P-${letter}-${two(i + 1)}${cut ? 'U' : ''}`,
        part: cut ? 'cripple post over rear door' : letter === 'F' ? 'front wall post' : 'rear wall post',
        ...base,
        section: 'DH3x2x5/32',
        alloy: '6005A-T61',
        from: [x, y, bottom],
        to: [x, y, Z.plateTop],
        roll: 90,
      };
    });
    const corners = (['left', 'right'] as const).map(
      (which): Line => ({
        id: `PC-${letter}${letterOf(which)}`,
        part: 'corner post',
        ...base,
        section: 'RT2x1-1/2x1/4',
        alloy: '6061-T6',
        from: [corner, signOf(which) * MID, Z.sill],
        to: [corner, signOf(which) * MID, Z.plateTop],
        roll: 90,
      }),
    );
    const rearHeader: readonly Line[] = door
      ? [
          {
            id: 'HD-DR-B',
            part: 'rear door header',
            ...base,
            section: 'RT3x2x3/16',
            alloy: '6061-T6',
            from: [x, -14, 86.25],
            to: [x, 14, 86.25],
          },
        ]
      : [];
    return [...corners, ...posts, ...rearHeader];
  };
  return [...end('F', grid.plan.x0 + 1, grid.plan.x0 + 0.75), ...end('B', grid.rear - 1, grid.rear - 0.75)];
}

/** Triangles of plate on the inner faces, over jamb and header or jamb and sill, 5 in into the corner of the opening. */
export function gussets(grid: Grid): readonly Plate[] {
  const { slide } = grid.plan;
  const y = signOf(slide.side) * (IN - 5 / 32);
  const corner = (n: number, station: number, toward: 1 | -1, upper: boolean): Plate => {
    const outer = grid.x(station) - toward * HALF_POST;
    const z = upper ? slide.top + 6 : Z.sill + 0.5;
    const leg = upper ? -1 : 1;
    const at = (dx: number, dz: number): P => [outer + toward * dx, y, z + leg * dz];
    return {
      id: `G-${two(n)}`,
      part: `slide-out corner gusset, ${upper ? 'upper' : 'lower'} ${toward > 0 ? 'front' : 'rear'}`,
      ...base,
      alloy: '5083-H116',
      thickness: 5 / 16,
      outline: upper ? [at(0, 0), at(14, 0), at(3, 16), at(0, 16)] : [at(0, 0), at(12, 0), at(3, 12), at(0, 12)],
    };
  };
  return [
    corner(1, slide.from, 1, false),
    corner(2, slide.to, -1, false),
    corner(3, slide.from, 1, true),
    corner(4, slide.to, -1, true),
  ];
}
