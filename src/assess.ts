import { type Clearances, clearances } from './compute/access/clearances.js';
import { access } from './compute/access/index.js';
import { type PhotoCoverage, photoCoverage } from './compute/access/photos.js';
import type { AccessFigures } from './compute/access/types.js';
import { services } from './compute/services/index.js';
import type { ServicesFigures } from './compute/services/types.js';
import { type BondFigure, bondFigures } from './compute/structure/bonds.js';
import { type ClampFigures, clampFigures } from './compute/structure/clamps.js';
import { joints, openings, weldTotals } from './compute/structure/index.js';
import { type MaterialFigures, materials } from './compute/structure/materials.js';
import { type SpacingFigure, spacings } from './compute/structure/spacing.js';
import type { JointFigures, OpeningFigure, WeldTotals } from './compute/structure/types.js';
import { takeOff } from './compute/takeoff/index.js';
import type { TakeOff } from './compute/takeoff/types.js';
import { weights } from './compute/weights/index.js';
import type { Weights } from './compute/weights/types.js';
import { type InspectionShare, inspectionShares } from './compute/welding/inspection.js';
import { type WeldBands, weldBands } from './compute/welding/weld-bands.js';
import type { Finding } from './finding.js';
import type { Model } from './model/shell.js';
import { judge } from './rules/index.js';
import type { Outside, RuleArea } from './rules/rule.js';

/** Everything computed about one shell. The terminal, JSON, drawings and book read it and compute nothing again. */
export interface Figures {
  readonly takeOff: TakeOff;
  readonly weights: Weights;
  readonly services: ServicesFigures;
  readonly access: AccessFigures;
  readonly clearances: Clearances;
  readonly photos: PhotoCoverage;
  readonly joints: JointFigures;
  readonly openings: readonly OpeningFigure[];
  readonly weldTotals: WeldTotals;
  readonly materials: MaterialFigures;
  readonly inspection: readonly InspectionShare[];
  readonly spacings: readonly SpacingFigure[];
  readonly clamps: ClampFigures;
  readonly bonds: readonly BondFigure[];
  readonly weldBands: readonly WeldBands[];
}

export interface Assessment {
  readonly model: Model;
  readonly figures: Figures;
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
  const figures: Figures = whenAsked<Figures>({
    takeOff: () => takeOff(model),
    weights: () => weights(model, figures.takeOff),
    services: () => services(model, figures.takeOff),
    access: () => access(model),
    photos: () => photoCoverage(model),
    clearances: () => clearances(model, figures.takeOff),
    joints: () => joints(model),
    openings: () => openings(model),
    weldTotals: () => weldTotals(model),
    materials: () => materials(model, figures.takeOff),
    inspection: () => inspectionShares(model),
    spacings: () => spacings(model),
    clamps: () => clampFigures(model),
    bonds: () => bondFigures(model),
    weldBands: () => weldBands(model, figures.joints.joints),
  });
  return whenAsked<Assessment>({
    model: () => model,
    figures: () => figures,
    findings: () => [...found, ...judge(model, figures, outside, areas)],
  });
}

/** An object whose values are made when first read, and kept. */
function whenAsked<T extends object>(makers: { readonly [K in keyof T]: () => T[K] }): T {
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
