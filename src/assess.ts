import { clearances } from './compute/access/clearances.js';
import { access } from './compute/access/index.js';
import { photoCoverage } from './compute/access/photos.js';
import type { Computed, Figures } from './compute/figures.js';
import { overlay } from './compute/pictures/overlay.js';
import type { SolvedPhoto } from './compute/pictures/solve-photo.js';
import { photoSight, solvedPhotos } from './compute/pictures/solved-photos.js';
import { services } from './compute/services/index.js';
import { bondFigures } from './compute/structure/bonds.js';
import { clampFigures } from './compute/structure/clamps.js';
import { joints, openings, weldTotals } from './compute/structure/index.js';
import { materials } from './compute/structure/materials.js';
import { spacings } from './compute/structure/spacing.js';
import { takeOff } from './compute/takeoff/index.js';
import { weights } from './compute/weights/index.js';
import { inspectionShares } from './compute/welding/inspection.js';
import { heatAffectedZones } from './compute/welding/weld-bands.js';
import type { Finding } from './finding.js';
import { LazyMap } from './model/lazy-map.js';
import type { Model } from './model/shell.js';
import { judge } from './rules/index.js';
import type { Outside, RuleArea } from './rules/rule.js';

export type { Figures };

export interface Assessment extends Computed {
  /** Those of reading and linking first, then of the rules; by file, line, column within each. */
  readonly findings: readonly Finding[];
}

/**
 * The run on one page:
 *
 *     read (source) → check form (schema) → link (model)  — done by the reader, its findings come in as `found`
 *       → compute (figures) → judge (rules) → Assessment
 *
 * Each figure is computed when it is first asked for, once; so are the findings. A command that answers from the weights
 * costs the weights. With `areas`, only the rules of these areas judge: for commands that tell no findings but those that touch
 * their answer.
 */
export function assess(model: Model, found: readonly Finding[], outside: Outside = {}, areas?: readonly RuleArea[]): Assessment {
  const figures: Figures = lazyFields<Figures>({
    takeOff: () => takeOff(model),
    weights: () => weights(model, figures.takeOff),
    services: () => services(model, figures.takeOff),
    access: () => access(model),
    solvedPhotos: () => solvedPhotos(model, (file) => outside.photos?.get(file)?.picture ?? outside.pictures?.get(file)),
    overlays: () => new LazyMap(figures.solvedPhotos.keys(), (id) => overlay(model, figures.solvedPhotos.get(id) as SolvedPhoto)),
    photos: () => photoCoverage(model, photoSight(model, figures.solvedPhotos)),
    clearances: () => clearances(model, figures.takeOff),
    joints: () => joints(model),
    openings: () => openings(model),
    weldTotals: () => weldTotals(model),
    materials: () => materials(model, figures.takeOff),
    inspection: () => inspectionShares(model),
    spacings: () => spacings(model),
    clamps: () => clampFigures(model),
    bonds: () => bondFigures(model),
    heatAffectedZones: () => heatAffectedZones(model, figures.joints.joints),
  });
  return lazyFields<Assessment>({
    model: () => model,
    figures: () => figures,
    findings: () => [...found, ...judge(model, figures, outside, areas)],
  });
}

/** An object whose values are made when first read, and kept. */
function lazyFields<T extends object>(makers: { readonly [K in keyof T]: () => T[K] }): T {
  const made = {} as T;
  for (const key of Object.keys(makers) as (keyof T)[]) {
    const keep = (value: T[keyof T]): T[keyof T] => {
      Object.defineProperty(made, key, { value, enumerable: true });
      return value;
    };
    Object.defineProperty(made, key, { get: () => keep(makers[key]()), enumerable: true, configurable: true });
  }
  return made;
}
