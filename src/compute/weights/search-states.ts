import type { Vec3 } from '../../geometry/vector.js';
import { getOwn } from '../../get-own.js';
import { OCCUPANT_KG } from '../../model/occupant.js';
import type { Model } from '../../model/shell.js';
import { type Axle, type FilledBox, OUTWARD } from '../../records/index.js';
import { type AxleModel, axleModelOf, reactions } from './axle-reactions.js';
import { type Load, loadAt, NO_LOAD, sumOf, times } from './load.js';
import type { Items } from './normalise.js';
import { fullTank, tankRole, unladenLevel } from './tanks.js';
import { type SharedAs, sideShares } from './vehicle-load.js';

/** One thing that the user may put in or leave out, between nothing and full. */
export interface LoadChoice {
  readonly name: string;
  readonly kind: 'tank' | 'seat' | 'bay';
  readonly full: Load;
  /** Level that the unladen vehicle already has of it. */
  readonly already: number;
}

/** A way that the vehicle may stand: which axles are up and which slide-outs are out. */
export interface SearchState {
  readonly axleModel: AxleModel;
  readonly lifted: ReadonlySet<string>;
  readonly out: readonly string[];
  /** `tag up, SO-1 out`; empty with all axles down and every slide-out in. */
  readonly words: string;
  /** What the slide-outs that are out move. */
  readonly moved: Load;
  readonly choices: readonly LoadChoice[];
}

/** So many axles and slide-outs are tried in every combination; of more, each one alone and all together. */
const MOST_TOGETHER = 4;

/** Every way that the vehicle may stand and be loaded in, all axles down and all slide-outs in first. */
export function searchStates(model: Model, items: Items): readonly SearchState[] {
  const { axles } = model.shell.chassis;
  const slides = slideOuts(model, items);
  return combinations(axles.filter((axle) => axle.lift).map((axle) => axle.id)).flatMap((up) => {
    const lifted = new Set(up);
    const found = axleModelOf(axles, lifted);
    if ('problem' in found) return [];
    return combinations(slides.map((slide) => slide.id)).map((out): SearchState => {
      const open = slides.filter((slide) => out.includes(slide.id));
      return {
        axleModel: found.axleModel,
        lifted,
        out,
        words: [...up.map((id) => `${id} up`), ...out.map((id) => `${id} out`)].join(', '),
        moved: sumOf(open.map((slide) => slide.moves)),
        choices: choicesOf(model, open),
      };
    });
  });
}

function combinations(ids: readonly string[]): readonly (readonly string[])[] {
  if (ids.length > MOST_TOGETHER) return [[], ...ids.map((id) => [id]), ids];
  return Array.from({ length: 2 ** ids.length }, (_, bits) => ids.filter((_id, i) => (bits & (1 << i)) !== 0));
}

interface SlideOut {
  readonly id: string;
  readonly byMm: Vec3;
  /** The moment that its own parts make by going out, kg·mm; no mass is added. */
  readonly moves: Load;
}

/** Slide-outs with a recorded travel, and what is recorded as riding on them. */
function slideOuts({ shell }: Model, items: Items): readonly SlideOut[] {
  return shell.openings.flatMap((opening): SlideOut[] => {
    const way = opening.wall === undefined ? undefined : getOwn(OUTWARD, opening.wall);
    const riders = shell.components.filter((one) => one.ridesOn === opening.id);
    if (!way || opening.travelMm === undefined) return [];
    const byMm = way.map((part) => part * (opening.travelMm as number)) as unknown as Vec3;
    const massKg = riders.reduce((sum, one) => sum + (items.get(one.id)?.massKg ?? 0), 0);
    const carries = [...shell.tanks, ...shell.bays].some(({ body }) => body?.ridesOn === opening.id);
    return massKg > 0 || carries ? [{ id: opening.id, byMm, moves: shifted({ ...NO_LOAD, massKg }, byMm) }] : [];
  });
}

const shifted = ({ massKg }: Load, byMm: Vec3): Load => ({ ...loadAt(massKg, byMm), massKg: 0 });

function choicesOf({ shell }: Model, open: readonly SlideOut[]): readonly LoadChoice[] {
  const placed = (full: Load, body: FilledBox | undefined): Load => {
    const slide = open.find((one) => one.id === body?.ridesOn);
    return slide ? sumOf([full, shifted(full, slide.byMm)]) : full;
  };
  const tanks = shell.tanks
    // Operating fluids stay full: the vehicle does not run without them.
    .filter((tank) => tankRole(tank) !== 'operating fluid')
    .map(
      (tank): LoadChoice => ({
        name: tank.id,
        kind: 'tank',
        full: placed(fullTank(tank), tank.body),
        already: unladenLevel(tank),
      }),
    );
  const seats = shell.seats
    .filter((seat) => seat.belted)
    .map((seat): LoadChoice => ({ name: seat.id, kind: 'seat', full: loadAt(OCCUPANT_KG, seat.at), already: 0 }));
  const bays = shell.bays
    .filter((bay) => bay.limitKg !== undefined)
    .map(
      (bay): LoadChoice => ({
        name: bay.id,
        kind: 'bay',
        full: placed(loadAt(bay.limitKg as number, bay.at), bay.body),
        already: 0,
      }),
    );
  return [...tanks, ...seats, ...bays].filter((choice) => choice.full.massKg > 0);
}

/** What a scale could show: an axle, or one end of it. */
export interface Gauge {
  readonly axle: number;
  readonly end?: 'left' | 'right';
  readonly name: string;
}

/** Every axle that stands on the road, and its ends where the track is on record. */
export const gauges = (axles: readonly Axle[], lifted: ReadonlySet<string>): readonly Gauge[] =>
  axles.flatMap(({ id, trackMm }, axle): Gauge[] => {
    if (lifted.has(id)) return [];
    const ends = (['left', 'right'] as const).map((end) => ({ axle, end, name: `${end} end of ${id}` }));
    return [{ axle, name: id }, ...(trackMm === undefined || trackMm <= 0 ? [] : ends)];
  });

/** What a load adds to what a gauge shows, kg: linear in the load, since sides are shared by the unladen vehicle's own loads. */
export function gaugeOf(axleModel: AxleModel, sharedAs: SharedAs, { axle, end }: Gauge): (load: Load) => number {
  const share = sideShares(sharedAs, axleModel)[axle] as number;
  const track = axleModel.axles[axle]?.trackMm ?? 0;
  return (load) => {
    const kg = reactions(axleModel, load)[axle] as number;
    return end === undefined ? kg : kg / 2 + ((end === 'right' ? 1 : -1) * load.yKgMm * share) / track;
  };
}

/** The most and the least that choices between empty and full add to what the unladen vehicle shows. */
export function loadRangeOf(
  choices: readonly LoadChoice[],
  adds: (load: Load) => number,
): { readonly most: number; readonly least: number } {
  return choices.reduce(
    ({ most, least }, { full, already }) => {
      const each = adds(full);
      const [filled, emptied] = [each * (1 - already), -each * already];
      return { most: most + Math.max(filled, emptied), least: least + Math.min(filled, emptied) };
    },
    { most: 0, least: 0 },
  );
}

/** Choices at their levels as one load on top of the unladen vehicle. */
export const loadedTo = (choices: readonly LoadChoice[], levels: readonly number[]): Load =>
  sumOf(choices.map(({ full, already }, i) => times(full, (levels[i] as number) - already)));
