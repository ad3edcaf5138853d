import { clipToConvex, type Point, signedArea } from '../../geometry/planar.js';
import { distance, dot, subtract, unit, type Vec3 } from '../../geometry/vector.js';
import type { Model } from '../../model/shell.js';
import { STANDARD_GRAVITY } from '../../quantity/units.js';
import type { Opening, Panel, PanelKind } from '../../records/index.js';
import { shapeProperties } from '../../sections/index.js';
import { openingCorners } from '../solids.js';
import { densityKgMm3 } from '../takeoff/density.js';
import { panelFigures } from '../takeoff/panels.js';
import { type Beam, fixedEven, simpleEven } from './beam.js';

/** E of most 6xxx alloys and of 5052, where the library has none: Aluminum Design Manual (10,100 ksi), unverified citation. */
const ALUMINIUM_MODULUS_PA = 69.637e9;
/** A panel this near to the opening's plane hangs on its header. Project default. */
const ON_WALL_MM = 200;

/**
 * Sag of an opening's header, mm, between the opening's sides. Information beside the measured sag, never a rating: nothing that
 * hangs on it counts but its own mass and the panels over it.
 */
export interface HeaderFigure {
  /** Under its own mass, simply held at the sides: the most that its mass can do. */
  readonly ownMm: number;
  /** Mass of the panels over the opening, kg. */
  readonly panelKg: number;
  /** Under its own mass and those panels, simply held. */
  readonly withPanelMm: number;
  /** The same with both ends built in: a welded header lies between the two. */
  readonly builtInMm: number;
}

/** Undefined without a header on record as a straight member: a bent one carries otherwise. */
export function headerFigure(opening: Opening, model: Model): HeaderFigure | undefined {
  const { shell, library } = model;
  const header = shell.members.find(({ id }) => id === opening.header);
  if (header?.shape.kind !== 'line' || header.shape.bends) return undefined;
  const section = library.sections.get(header.shape.section);
  if (!section || opening.widthMm <= 0) return undefined;
  const { areaMm2, ixMm4, iyMm4, ixyMm4 } = shapeProperties(section.dimensions);
  const roll = (header.shape.rollDeg * Math.PI) / 180;
  const inertiaMm4 = ixMm4 * Math.cos(roll) ** 2 + iyMm4 * Math.sin(roll) ** 2 + ixyMm4 * Math.sin(2 * roll);
  if (inertiaMm4 <= 0) return undefined;
  const modulusPa = library.materials.get(header.alloy)?.modulusPa ?? ALUMINIUM_MODULUS_PA;
  const beam: Beam = { spanMm: opening.widthMm, modulusNMm2: modulusPa / 1e6, inertiaMm4 };
  const own = areaMm2 * densityKgMm3(header.alloy, library) * STANDARD_GRAVITY;
  const panelKg = panelsOverKg(opening, model);
  const whole = own + (panelKg * STANDARD_GRAVITY) / opening.widthMm;
  return {
    ownMm: simpleEven(beam, own),
    panelKg,
    withPanelMm: simpleEven(beam, whole),
    builtInMm: fixedEven(beam, whole),
  };
}

/** What a header carries of a wall: its skin, caps and lining. */
const OVER: ReadonlySet<PanelKind> = new Set(['skin', 'cap', 'interior']);

/** Mass of what of the wall's panels lies between the opening's sides and above its top, kg; windows in it counted as sheet. */
function panelsOverKg(opening: Opening, model: Model): number {
  const corners = openingCorners(opening);
  if (!corners) return 0;
  const [front, rear, , top] = corners;
  const along = unit(subtract(rear, front));
  const out: Vec3 = unit([-along[1], along[0], 0]);
  const flat = (corner: Vec3): Point => [dot(subtract(corner, front), along), corner[2] - top[2]];
  const over: readonly Point[] = [
    [0, 0],
    [distance(front, rear), 0],
    [distance(front, rear), HIGHEST_MM],
    [0, HIGHEST_MM],
  ];
  const onWall = (panel: Panel): boolean =>
    OVER.has(panel.panelKind) && panel.outline.every((corner) => Math.abs(dot(subtract(corner, front), out)) <= ON_WALL_MM);
  // The sheet's own mass a square millimetre: what was cut out of it weighs nothing anywhere.
  const kgPerMm2 = new Map(panelFigures(model).map(({ id, massKg, areaMm2 }) => [id, areaMm2 > 0 ? massKg / areaMm2 : 0]));
  return model.shell.panels.filter(onWall).reduce((sum, { id, outline }) => {
    const overMm2 = Math.abs(signedArea(clipToConvex(outline.map(flat), over)));
    return sum + overMm2 * (kgPerMm2.get(id) ?? 0);
  }, 0);
}

/** No wall is higher above an opening. */
const HIGHEST_MM = 10_000;
