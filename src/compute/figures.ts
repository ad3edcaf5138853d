import type { Model } from '../model/shell.js';
import type { Clearances } from './access/clearances.js';
import type { PhotoCoverage } from './access/photos.js';
import type { AccessFigures } from './access/types.js';
import type { Overlay } from './pictures/overlay.js';
import type { SolvedPhoto } from './pictures/solve-photo.js';
import type { ServicesFigures } from './services/types.js';
import type { BondFigure } from './structure/bonds.js';
import type { ClampFigures } from './structure/clamps.js';
import type { MaterialFigures } from './structure/materials.js';
import type { SpacingFigure } from './structure/spacing.js';
import type { JointFigures, OpeningFigure, WeldTotals } from './structure/types.js';
import type { TakeOff } from './takeoff/types.js';
import type { Weights } from './weights/types.js';
import type { InspectionShare } from './welding/inspection.js';
import type { WeldBands } from './welding/weld-bands.js';

/** Everything computed about one shell. The terminal, JSON, drawings and book read it and compute nothing again. */
export interface Figures {
  readonly takeOff: TakeOff;
  readonly weights: Weights;
  readonly services: ServicesFigures;
  readonly access: AccessFigures;
  readonly clearances: Clearances;
  readonly photos: PhotoCoverage;
  /** Photos with marked points, by id. */
  readonly solvedPhotos: ReadonlyMap<string, SolvedPhoto>;
  /** What is recorded in the view of each of them, made when asked for. */
  readonly overlays: ReadonlyMap<string, Overlay>;
  readonly joints: JointFigures;
  readonly openings: readonly OpeningFigure[];
  readonly weldTotals: WeldTotals;
  readonly materials: MaterialFigures;
  readonly inspection: readonly InspectionShare[];
  readonly spacings: readonly SpacingFigure[];
  readonly clamps: ClampFigures;
  readonly bonds: readonly BondFigure[];
  readonly heatAffectedZones: readonly WeldBands[];
}

/** A shell and what was computed of it: what lookups and rules answer from. */
export interface Computed {
  readonly model: Model;
  readonly figures: Figures;
  /** Where more of them, computed when they are asked for, are kept for the next question. */
  readonly kept?: KeptFigures;
}

/** Figures that were computed of these very records before, by name. */
export interface KeptFigures {
  has(name: string): boolean;
  get(name: string): unknown;
  put(name: string, figure: unknown): void;
}
