import { type Box, boxBetween } from '../../geometry/box.js';
import { add, scale, type Vec3 } from '../../geometry/vector.js';
import type { Model } from '../../model/shell.js';
import type { FilledBox, Tank } from '../../records/index.js';
import { linePath } from '../solids.js';

/** A box of room that something fills, as recorded or as it had to be taken. */
export interface Solid {
  /** Record id; of the chassis `chassis rail left`, `chassis rail right`, and `chassis cross member 1` from the front. */
  readonly id: string;
  readonly kind: 'component' | 'tank' | 'bay' | 'rail' | 'cross member';
  readonly name: string;
  readonly box: Box;
  /** What was not recorded and had to be taken, a sentence. */
  readonly assumed?: string;
  /** It hangs outside, exposed. */
  readonly outside: boolean;
  /** The slide-out that it moves with. */
  readonly ridesOn?: string;
}

export interface StandingSolids {
  readonly solids: readonly Solid[];
  /** Sentences on what was taken, and on what has no size and so stands in nobody's way. */
  readonly assumptions: readonly string[];
}

/** Equipment, tanks, bays, chassis rails and cross members by the room that they fill. */
export function standing(model: Model): StandingSolids {
  const known = FOUND.get(model);
  if (known) return known;
  const found = standingOf(model);
  FOUND.set(model, found);
  return found;
}
const FOUND = new WeakMap<Model, StandingSolids>();

export const solids = (model: Model): readonly Solid[] => standing(model).solids;

function standingOf(model: Model): StandingSolids {
  const { shell } = model;
  const components = shell.components.flatMap(({ id, name, at, sizeMm, middle, outside, ridesOn }): readonly Solid[] =>
    sizeMm
      ? [{ id, kind: 'component', name, box: boxAbout(middle ?? at, sizeMm), outside: outside ?? false, ...rides(ridesOn) }]
      : [],
  );
  const bays = shell.bays.flatMap(({ id, name, at, body }): readonly Solid[] =>
    body?.sizeMm ? [{ id, kind: 'bay', name: name ?? id, box: boxAbout(body.middle ?? at, body.sizeMm), ...hung(body) }] : [],
  );
  const sized = new Set(components.map(({ id }) => id));
  const tanks = shell.tanks.flatMap((tank) => (tank.of !== undefined && sized.has(tank.of) ? [] : [tankSolid(tank)]));
  const all = [...components, ...tanks, ...bays, ...rails(model), ...crossMembers(model)];
  const silent = shell.bays.filter(({ body }) => !body?.sizeMm).map(({ id }) => id);
  return {
    solids: all,
    assumptions: [
      ...all.flatMap(({ assumed }) => assumed ?? []),
      ...(silent.length > 0 ? [`Bays without a recorded size are not in the way here: ${silent.join(', ')}.`] : []),
      ...railsMissing(model),
      ...crossMembersMissing(model),
    ],
  };
}

const rides = (ridesOn: string | undefined) => (ridesOn === undefined ? {} : { ridesOn });
const hung = (body: FilledBox | undefined) => ({ outside: body?.outside ?? false, ...rides(body?.ridesOn) });

export const boxAbout = (middle: Vec3, sizeMm: Vec3): Box =>
  boxBetween(add(middle, scale(sizeMm, -0.5)), add(middle, scale(sizeMm, 0.5)));

const MM3_PER_M3 = 1e9;

/** A tank by its size, else as a cube that holds what it holds: no form is on record. */
function tankSolid({ id, contents, capacityM3, at, body }: Tank): Solid {
  const rest = { id, kind: 'tank', name: `${contents} tank`, ...hung(body) } as const;
  const middle = body?.middle ?? at;
  if (body?.sizeMm) return { ...rest, box: boxAbout(middle, body.sizeMm) };
  const side = Math.cbrt(capacityM3 * MM3_PER_M3);
  const assumed = `${id}: no size recorded; taken as a cube of its capacity, ${Math.round(side)} mm a side, about its recorded place.`;
  return { ...rest, box: boxAbout(middle, [side, side, side]), assumed };
}

/** What is taken ahead of the front axle, and behind what stands furthest back, where the frame's length is not recorded, mm. */
const OVERHANG_MM = 700;

/** The two rails, top at zero height. `rail_spacing` is outside to outside. */
function rails({ shell }: Model): readonly Solid[] {
  const { railSpacingMm, railDepthMm, railWidthMm, lengthMm } = shell.chassis.frame;
  if (railSpacingMm === undefined || railDepthMm === undefined || railWidthMm === undefined) return [];
  const axles = shell.chassis.axles.map(({ xMm }) => xMm);
  const ends = shell.members.flatMap(({ shape }) => (shape.kind === 'line' ? linePath(shape).map(([x]) => x) : []));
  const rear = Math.max(...ends, ...axles.map((x) => x + OVERHANG_MM), 0);
  const front = lengthMm === undefined ? Math.min(...axles, 0) - OVERHANG_MM : rear - lengthMm;
  const assumed = `Chassis rails: they are taken to end where the shell or the last axle’s overhang ends${
    lengthMm === undefined ? `, and to begin ${OVERHANG_MM} mm ahead of the front axle: \`length\` is not recorded` : ''
  }.`;
  return ([-1, 1] as const).map((side): Solid => {
    const [outer, inner] = [(side * railSpacingMm) / 2, side * (railSpacingMm / 2 - railWidthMm)];
    const name = `chassis rail ${side < 0 ? 'left' : 'right'}`;
    const box = boxBetween([front, outer, -railDepthMm], [rear, inner, 0]);
    return { id: name, kind: 'rail', name, box, outside: false, ...(side < 0 ? { assumed } : {}) };
  });
}

/** Between the rails, each from inside to inside. */
function crossMembers({ shell }: Model): readonly Solid[] {
  const { railSpacingMm, railWidthMm, crossMembers: recorded = [] } = shell.chassis.frame;
  if (railSpacingMm === undefined || railWidthMm === undefined) return [];
  const half = railSpacingMm / 2 - railWidthMm;
  return recorded.map(({ xMm, depthMm, widthMm, belowTopMm }, i): Solid => {
    const name = `chassis cross member ${i + 1}`;
    const box = boxBetween([xMm - widthMm / 2, -half, -belowTopMm], [xMm + widthMm / 2, half, -belowTopMm - depthMm]);
    return { id: name, kind: 'cross member', name, box, outside: false };
  });
}

function crossMembersMissing({ shell }: Model): readonly string[] {
  const { railSpacingMm, railWidthMm, crossMembers: recorded } = shell.chassis.frame;
  if (shell.chassis.axles.length === 0) return [];
  if (!recorded)
    return [
      'Cross members of the chassis are not recorded and are not in the way here: `cross_members` of `chassis: {frame: …}`.',
    ];
  return recorded.length > 0 && (railSpacingMm === undefined || railWidthMm === undefined)
    ? [
        'Cross members of the chassis are not in the way here: they reach from rail to rail, and `rail_spacing` or `rail_width` is not recorded.',
      ]
    : [];
}

function railsMissing({ shell }: Model): readonly string[] {
  const { railSpacingMm, railDepthMm, railWidthMm } = shell.chassis.frame;
  if (shell.chassis.axles.length === 0) return [];
  const missing = [
    railSpacingMm === undefined && '`rail_spacing`',
    railDepthMm === undefined && '`rail_depth`',
    railWidthMm === undefined && '`rail_width`',
  ].filter((one) => one !== false);
  return missing.length === 0
    ? []
    : [`Chassis rails are not in the way here: ${missing.join(', ')} of \`chassis: {frame: …}\` not recorded.`];
}
