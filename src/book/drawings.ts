import type { Assessment } from '../assess.js';
import type { Surface } from '../compute/access/surfaces.js';
import type { Drawing, FrameDrawing, SheetSize, SymbolEntry, WeldSheet } from '../drawing/index.js';
import type { UnitSystem } from '../quantity/format.js';
import type { Screws } from '../query/release/index.js';
import type { Medium, Section } from '../records/index.js';

export type { Drawing as Figure, FrameDrawing as FrameFigure, SheetSize, SymbolEntry, WeldSheet };

/** Every drawing that the book asks for. Tests hand in plain ones. */
export interface Drawings {
  generalArrangement(a: Assessment, room: SheetSize): readonly Drawing[];
  cover(a: Assessment, room: SheetSize): Drawing | undefined;
  /** Frames of one stage after another, each with the stage that it shows. */
  frames(a: Assessment, room: SheetSize): readonly FrameDrawing[];
  weldMap(a: Assessment, room: SheetSize): readonly WeldSheet[];
  /** The symbols that the welds need, each once, drawn and in words. */
  weldSymbols(a: Assessment): readonly SymbolEntry[];
  services(a: Assessment, medium: Medium, room: SheetSize): readonly Drawing[];
  /** Each service of a medium from its sources to what it feeds, by what joins what. */
  lineDiagrams(a: Assessment, medium: Medium, room: SheetSize): readonly Drawing[];
  /** The record drawn over a photo of that width; undefined where the photo is not tied to the coach. */
  photoOverlay(a: Assessment, photo: string, widthMm: number): Drawing | undefined;
  panelKeyPlan(a: Assessment, id: string, room: SheetSize): Drawing | undefined;
  panelFace(a: Assessment, id: string, room: SheetSize): Drawing | undefined;
  panels(a: Assessment, room: SheetSize): readonly Drawing[];
  opening(a: Assessment, id: string, room: SheetSize): Drawing | undefined;
  section(section: Section, room: SheetSize, units: UnitSystem): Drawing | undefined;
  axleChart(a: Assessment, room: SheetSize): Drawing | undefined;
  growthChart(a: Assessment, room: SheetSize): Drawing | undefined;
  influenceChart(a: Assessment, room: SheetSize): Drawing | undefined;
  bayPlan(a: Assessment, room: SheetSize): Drawing | undefined;
  loadingSide(a: Assessment, room: SheetSize): Drawing | undefined;
  /** The longest screw that is safe, area by area; one map of what a screw meets serves every surface. */
  drillAreas(a: Assessment, map: Screws, surface: Surface, room: SheetSize): Drawing | undefined;
  /** Each panel of fuses or breakers as it looks. */
  distributionFaces(a: Assessment, room: SheetSize): readonly Drawing[];
  protectionPlan(a: Assessment, room: SheetSize): Drawing | undefined;
  emergencyPlan(a: Assessment, room: SheetSize): Drawing | undefined;
  noDrillFace(a: Assessment, surface: Surface, room: SheetSize): Drawing | undefined;
  swatch(medium: Medium): string;
  mediumName(medium: Medium): string;
  mediumLetter(medium: Medium): string;
}
