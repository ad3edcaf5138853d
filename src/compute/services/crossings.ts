import { type Bounds, type Box, boundsOf, boxBounds, clipToBox, grow, overlap } from '../../geometry/box.js';
import { facet, throughFacet } from '../../geometry/facet.js';
import { grid } from '../../geometry/grid.js';
import { distance, lerp, type Vec3 } from '../../geometry/vector.js';
import type { Model } from '../../model/shell.js';
import type { PanelKind, Run } from '../../records/index.js';
import { lineWalls } from '../access/walls.js';
import { lazy } from '../lazy-value.js';
import { memberBox } from '../solids.js';
import type { Crossing } from './types.js';

/** Metal that a run may go through. */
interface Metal {
  readonly id: string;
  readonly bounds: Bounds;
  /** Its sheets, made when a run first comes near. */
  readonly sheets: () => readonly Sheet[];
}

interface Sheet {
  readonly id: string;
  readonly kind: Crossing['kind'];
  readonly bounds: Bounds;
  /** It has weather or road on one side. */
  readonly weather?: boolean;
  /** Shares of the way (0–1) where a stretch enters and leaves it. */
  through(from: Vec3, to: Vec3): readonly [number, number] | undefined;
}

/** A run that slides along a face does not go through it: walls are taken this much thinner on each side, mm. */
const SKIN_MM = 0.5;
/** Both walls of a tube want one entry in the record: places nearer together than this are one crossing, mm. Project default. */
const ONE_PLACE_MM = 150;
/** A grommet recorded by its place belongs to a crossing within this and the run's own tolerance, mm. Project default. */
const GROMMET_MM = 50;
/** A run that ends in the metal ends at a fitting, which is no passage, mm. */
const END_MM = 1;

/** Where runs go through members and panels. Access panels, and interior panels that are not of metal, want no grommet. */
export function crossings(model: Model): readonly Crossing[] {
  if (model.shell.runs.length === 0) return [];
  const metals = [...memberMetal(model), ...panelMetal(model)];
  const index = grid(
    metals.map(({ bounds }, i) => ({ index: i, bounds })),
    500,
  );
  return model.shell.runs.flatMap((run) => {
    const places: Place[] = [];
    run.path.slice(1).forEach((to, i) => {
      const from = run.path[i] as Vec3;
      const bounds = boundsOf([from, to]);
      for (const k of index.near(bounds)) {
        const metal = metals[k] as Metal;
        if (!overlap(bounds, metal.bounds)) continue;
        for (const sheet of metal.sheets()) {
          const part = overlap(bounds, sheet.bounds) ? sheet.through(from, to) : undefined;
          if (!part || endsInside(run, i, from, to, part)) continue;
          const share = (part[0] + part[1]) / 2;
          places.push({ sheet, at: lerp(from, to, share), along: i + share });
        }
      }
    });
    return oncePerPlace(
      run,
      places.sort((a, b) => a.along - b.along || (a.sheet.id < b.sheet.id ? -1 : 1)),
    );
  });
}

/** Where a run goes through one sheet; `along` counts stretches of its path. */
interface Place {
  readonly sheet: Sheet;
  readonly at: Vec3;
  readonly along: number;
}

function endsInside(run: Run, stretch: number, from: Vec3, to: Vec3, [enter, leave]: readonly [number, number]): boolean {
  const length = distance(from, to);
  const atStart = stretch === 0 && enter * length <= END_MM;
  const atEnd = stretch === run.path.length - 2 && (1 - leave) * length <= END_MM;
  return atStart || atEnd;
}

/** In order along the run; both walls of a tube, or a sheet met at a bend, are one. */
function oncePerPlace(run: Run, places: readonly Place[]): readonly Crossing[] {
  const found: Crossing[] = [];
  for (const { sheet, at } of places) {
    const { id, kind } = sheet;
    if (found.some((other) => other.through === id && distance(other.at, at) < ONE_PLACE_MM)) continue;
    found.push({ run: run.id, through: id, kind, at, grommet: isNamed(run.grommets, run, id, at), ...sealing(sheet, run, at) });
  }
  return found;
}

/** Whether a passage is among those on record, by what it goes through or by its place. */
const isNamed = (passages: Run['grommets'], { toleranceMm = 0 }: Run, id: string, at: Vec3): boolean =>
  passages.some((one) => (typeof one === 'string' ? one === id : distance(one, at) <= GROMMET_MM + toleranceMm));

const sealing = ({ id, weather }: Sheet, run: Run, at: Vec3): Pick<Crossing, 'sealed'> =>
  weather ? { sealed: isNamed(run.sealed ?? [], run, id, at) } : {};

/** Panels with weather or road on one side. */
const OUTSIDE: ReadonlySet<PanelKind> = new Set(['skin', 'roof', 'belly', 'cap']);

const memberMetal = ({ shell, library }: Model): readonly Metal[] =>
  shell.members.flatMap((member): readonly Metal[] => {
    const { shape } = member;
    if (shape.kind === 'plate') return flatMetal(member.id, flatSheet(member.id, 'member', shape.outline));
    const section = library.sections.get(shape.section);
    if (!section) return [];
    const bounds = grow(boxBounds(memberBox(shape, section.dimensions)), ROUNDING_MM);
    return [
      { id: member.id, bounds, sheets: lazy(() => lineWalls(member, section.dimensions).map((box) => wall(member.id, box))) },
    ];
  });

/** Walls reach as far as the whole member but for rounding, mm. */
const ROUNDING_MM = 1e-6;

function wall(id: string, whole: Box): Sheet {
  const half = whole.half.map((one) => Math.max(one / 2, one - SKIN_MM)) as unknown as Box['half'];
  const box: Box = { ...whole, half };
  return { id, kind: 'member', bounds: boxBounds(box), through: (from, to) => clipToBox(from, to, box) };
}

const panelMetal = ({ shell }: Model): readonly Metal[] =>
  shell.panels
    .filter((panel) => panel.panelKind !== 'access' && (panel.panelKind !== 'interior' || panel.alloy !== undefined))
    .flatMap(({ id, outline, holes, panelKind }) => {
      const weather = OUTSIDE.has(panelKind);
      const sheets = flatSheet(id, 'panel', outline, holes).map((sheet): Sheet => ({ ...sheet, weather }));
      return flatMetal(id, sheets);
    });

const flatMetal = (id: string, sheets: readonly Sheet[]): readonly Metal[] =>
  sheets.map((sheet) => ({ id, bounds: sheet.bounds, sheets: () => [sheet] }));

function flatSheet(
  id: string,
  kind: Crossing['kind'],
  outline: readonly Vec3[],
  holes: readonly (readonly Vec3[])[] = [],
): readonly Sheet[] {
  const sheet = facet(outline, holes);
  if (!sheet) return [];
  const through: Sheet['through'] = (from, to) => {
    const share = throughFacet(from, to, sheet);
    return share === undefined ? undefined : [share, share];
  };
  return [{ id, kind, bounds: boundsOf(outline), through }];
}
