import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  outOf,
  type Surface,
  surfaceKey,
  surfaces,
  surfacesInOrder,
  surfaceWords,
} from '../../../src/compute/access/surfaces.js';
import { viewBounds } from '../../../src/drawing/extent.js';
import { openingMarks } from '../../../src/drawing/marks/openings.js';
import { viewOfSurface } from '../../../src/drawing/projection.js';
import { layOut, type Port } from '../../../src/drawing/sheet.js';
import { openingsOf } from '../../../src/drawing/views/panels.js';
import { type Facet, facet, throughFacet } from '../../../src/geometry/facet.js';
import { add, dot, scale, type Vec3 } from '../../../src/geometry/vector.js';
import { type Facing, type Opening, OUTWARD, type Panel, type PanelKind } from '../../../src/records/index.js';
import { buildModel, record } from '../../support/build.js';

/** An upright or level rectangle at a place of one axis, over spans of the two others. */
const sheet = (
  id: string,
  panelKind: PanelKind,
  axis: 0 | 1 | 2,
  at: number,
  spans: readonly (readonly [number, number])[],
  more: Partial<Panel> = {},
): Panel => {
  const [a, b] = ([0, 1, 2] as const).filter((k) => k !== axis) as [0 | 1 | 2, 0 | 1 | 2];
  const corner = (i: number, j: number): Vec3 => {
    const place: [number, number, number] = [at, at, at];
    place[a] = spans[0]?.[i] as number;
    place[b] = spans[1]?.[j] as number;
    return place;
  };
  return { ...record(id), panelKind, outline: [corner(0, 0), corner(1, 0), corner(1, 1), corner(0, 1)], holes: [], ...more };
};

const X = [0, 6000] as const;
const Y = [-1250, 1250] as const;
const Z = [0, 2300] as const;
/** A closed coach: skins outside, linings 60 mm within, floor and ceiling, one partition across. */
const coach = (partitionAt: number): readonly Panel[] => [
  sheet('SK-L', 'skin', 1, Y[0], [X, Z]),
  sheet('SK-R', 'skin', 1, Y[1], [X, Z]),
  sheet('SK-F', 'skin', 0, X[0], [Y, Z]),
  sheet('SK-B', 'skin', 0, X[1], [Y, Z]),
  sheet('RF', 'roof', 2, Z[1], [X, Y]),
  sheet('BP', 'belly', 2, Z[0], [X, Y]),
  sheet('IP-L', 'interior', 1, Y[0] + 60, [X, Z]),
  sheet('IP-R', 'interior', 1, Y[1] - 60, [X, Z]),
  sheet('IP-F', 'interior', 0, X[0] + 60, [Y, Z]),
  sheet('IP-B', 'interior', 0, X[1] - 60, [Y, Z]),
  sheet('CL', 'interior', 2, Z[1] - 100, [X, Y]),
  sheet('FL', 'interior', 2, Z[0] + 200, [X, Y]),
  sheet('PT', 'interior', 0, partitionAt, [Y, [200, 2200]], { facing: 'rear' }),
];
const HOSTS = ['SK-L', 'SK-R', 'SK-F', 'SK-B', 'RF', 'BP', 'IP-L', 'IP-R', 'IP-F', 'IP-B', 'CL', 'FL', 'PT'] as const;

const SAID: Readonly<Record<(typeof HOSTS)[number], string>> = {
  'SK-L': 'left outside',
  'SK-R': 'right outside',
  'SK-F': 'front outside',
  'SK-B': 'rear outside',
  RF: 'roof outside',
  BP: 'underside outside',
  'IP-L': 'left inside',
  'IP-R': 'right inside',
  'IP-F': 'front inside',
  'IP-B': 'rear inside',
  CL: 'ceiling inside',
  FL: 'floor inside',
  PT: 'partition inside',
};

describe('the surface of a panel', () => {
  const all = coach(3000);
  const found = surfaces(buildModel({ panels: all }));

  it.each(HOSTS)('%s by kind and place', (id) => {
    const { side, seenFrom } = found.get(id) as Surface;
    expect(`${side} ${seenFrom}`).toBe(SAID[id]);
  });

  it('is that of what it is let into, over a chain, and a chain in a circle ends', () => {
    const on = (id: string, of: string, more: Partial<Panel> = {}) =>
      sheet(
        id,
        'access',
        1,
        Y[0] + 60,
        [
          [1000, 1400],
          [800, 1200],
        ],
        { of, ...more },
      );
    const panels = [...all, on('A', 'IP-L', { facing: 'right' }), on('B', 'A'), on('C', 'D'), on('D', 'C', { facing: 'left' })];
    const said = surfaces(buildModel({ panels }));
    expect(surfaceWords(said.get('A') as Surface)).toBe('left wall, inside');
    expect(said.get('B')).toEqual(said.get('A'));
    expect(said.has('C') && said.has('D')).toBe(true);
  });

  it('faces the way of the partition’s own side: both sides of one partition are two surfaces', () => {
    const back = sheet('PT-F', 'interior', 0, 2960, [Y, [200, 2200]], { facing: 'front' });
    const said = surfaces(buildModel({ panels: [...all, back] }));
    expect(surfaceKey(said.get('PT') as Surface)).not.toBe(surfaceKey(said.get('PT-F') as Surface));
  });
});

describe('brute force on random rooms', () => {
  const SPANS: Readonly<Record<string, readonly (readonly [number, number])[]>> = { x: [Y, Z], y: [X, Z], z: [X, Y] };
  const room = fc.record({
    partitionAt: fc.integer({ min: 1500, max: 4500 }),
    access: fc.array(
      fc.record({
        host: fc.constantFrom(...HOSTS),
        u: fc.double({ min: 0.2, max: 0.7, noNaN: true }),
        v: fc.double({ min: 0.3, max: 0.7, noNaN: true }),
        names: fc.boolean(),
      }),
      { minLength: 1, maxLength: 8 },
    ),
  });

  it('puts each access panel in one view, and in one from whose side nothing hides it', () => {
    fc.assert(
      fc.property(room, ({ partitionAt, access }) => {
        const walls = coach(partitionAt);
        const panels = [...walls, ...access.map((one, i) => letIn(`AP-${i}`, one, walls, SPANS))];
        const model = buildModel({ panels });
        const said = surfaces(model);
        const flats = walls.map((wall) => ({ id: wall.id, flat: facet(wall.outline) as Facet }));
        access.forEach(({ host }, i) => {
          const id = `AP-${i}`;
          const surface = said.get(id) as Surface;
          expect(surface).toEqual(said.get(host));
          const drawnIn = surfacesInOrder(model).filter((one) => surfaceKey(one) === surfaceKey(surface));
          expect(drawnIn).toHaveLength(1);
          // An eye 400 mm before the panel sees it past every sheet; an eye as far behind it does not see its face.
          const middle = (facet((panels.find((one) => one.id === id) as Panel).outline) as Facet).center;
          const eye = add(middle, scale(outOf(surface), 400));
          const between = flats.filter((wall) => wall.id !== host && throughFacet(eye, middle, wall.flat) !== undefined);
          expect(between.map((wall) => wall.id)).toEqual([]);
          // Outside there is nothing but air behind the eye, inside there is a wall in every direction.
          const far = add(middle, scale(outOf(surface), 50_000));
          const hit = flats.some((wall) => wall.id !== host && throughFacet(far, middle, wall.flat) !== undefined);
          expect(hit).toBe(surface.seenFrom === 'inside');
          expect(dot(viewOfSurface(surface).toViewer, outOf(surface))).toBeCloseTo(1, 9);
        });
      }),
      { numRuns: 150 },
    );
  });

  it('a mirrored ceiling lies as the floor plan does; a wall from inside lies as one who stands there sees it (ISO 5456-2)', () => {
    const ceiling = viewOfSurface({ side: 'ceiling', seenFrom: 'inside', faces: 'down' });
    const floor = viewOfSurface({ side: 'floor', seenFrom: 'inside', faces: 'up' });
    expect([ceiling.right, ceiling.up]).toEqual([floor.right, floor.up]);
    for (const faces of ['left', 'right', 'front', 'rear'] as const satisfies readonly Facing[]) {
      const { right, up } = viewOfSurface({ side: 'partition', seenFrom: 'inside', faces });
      // Eyes look against the face; what is up is up, and the right hand points along eyes × up.
      const eyes = scale(OUTWARD[faces], -1);
      expect(up).toEqual([0, 0, 1]);
      expect(dot(right, [eyes[1], -eyes[0], 0])).toBeCloseTo(1, 9);
    }
  });
});

describe('openings of a partition', () => {
  const opening = (id: string, from: Vec3, to: Vec3, wall?: string): Opening => ({
    ...record(id),
    openingKind: 'door',
    sill: [from, to],
    widthMm: 600,
    heightMm: 1900,
    ...(wall === undefined ? {} : { wall }),
    gussets: [],
  });
  const door = opening('DP', [3020, -300, 200], [3020, 300, 200], 'partition');
  const entry = opening('DR', [1000, 1250, 200], [1700, 1250, 200], 'right');
  const model = buildModel({ panels: [...coach(3000)], openings: [door, entry] });
  const sides = surfacesInOrder(model);
  const drawnIn = (of: Surface): readonly string[] => {
    const view = viewOfSurface(of);
    const bounds = viewBounds(view, [
      [0, -1250, 0],
      [6000, 1250, 2300],
    ]);
    const [port] = layOut(
      [{ view, bounds }],
      { widthMm: 200, heightMm: 150 },
      { sideMm: 5, aboveMm: 5, belowMm: 5, mostMm: 9 },
    ).ports;
    return openingMarks(model, openingsOf(of) as Surface, port as Port).marks.flatMap(({ id }) => id ?? []);
  };

  it('are drawn in the view of the partition and in no wall, those of walls in theirs', () => {
    const partition = sides.filter(({ side }) => side === 'partition');
    expect(partition.map(drawnIn)).toEqual([['DP']]);
    for (const one of sides.filter(({ side }) => ['left', 'front', 'rear'].includes(side))) expect(drawnIn(one)).toEqual([]);
    for (const one of sides.filter(({ side }) => side === 'right')) expect(drawnIn(one)).toEqual(['DR']);
  });
});

/** A panel of 300 mm somewhere in a sheet; some name the sheet, some leave it to their place. */
function letIn(
  id: string,
  { host, u, v, names }: { readonly host: string; readonly u: number; readonly v: number; readonly names: boolean },
  walls: readonly Panel[],
  spansOf: Readonly<Record<string, readonly (readonly [number, number])[]>>,
): Panel {
  const wall = walls.find((one) => one.id === host) as Panel;
  const axis = ([0, 1, 2] as const).find((k) => new Set(wall.outline.map((corner) => corner[k])).size === 1) as 0 | 1 | 2;
  const spans = spansOf['xyz'[axis] as string] as readonly (readonly [number, number])[];
  const at = spans.map(([low, high], k) => low + (k === 0 ? u : v) * (high - low));
  const around = at.map((middle) => [middle - 150, middle + 150] as const);
  return sheet(id, 'access', axis, wall.outline[0]?.[axis] as number, around, names ? { of: host } : {});
}
