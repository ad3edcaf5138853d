import type { Assessment } from '../assess.js';
import type { Section } from '../model/library.js';
import type { Medium } from '../model/services.js';
import type { Facing } from '../model/structure.js';
import type { UnitSystem } from '../quantity/format.js';

/** One drawing: finished SVG at its true size on the sheet. */
export interface Figure {
  readonly id: string;
  readonly title: string;
  readonly alt: string;
  readonly scale: string;
  readonly svg: string;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly ids: readonly string[];
}

export interface Room {
  readonly widthMm: number;
  readonly heightMm: number;
}

/** Every drawing that the book asks for. Tests hand in plain ones. */
export interface Drawings {
  generalArrangement(a: Assessment, room: Room): readonly Figure[];
  cover(a: Assessment, room: Room): Figure | undefined;
  frames(a: Assessment, room: Room): readonly Figure[];
  services(a: Assessment, medium: Medium, room: Room): readonly Figure[];
  panelKeyPlan(a: Assessment, id: string, room: Room): Figure | undefined;
  panelFace(a: Assessment, id: string, room: Room): Figure | undefined;
  panels(a: Assessment, room: Room): readonly Figure[];
  opening(a: Assessment, id: string, room: Room): Figure | undefined;
  section(section: Section, room: Room, units: UnitSystem): Figure | undefined;
  axleChart(a: Assessment, room: Room): Figure | undefined;
  growthChart(a: Assessment, room: Room): Figure | undefined;
  influenceChart(a: Assessment, room: Room): Figure | undefined;
  bayPlan(a: Assessment, room: Room): Figure | undefined;
  emergencyPlan(a: Assessment, room: Room): Figure | undefined;
  noDrillFace(a: Assessment, face: Facing, room: Room): Figure | undefined;
  swatch(medium: Medium): string;
  mediumName(medium: Medium): string;
  mediumLetter(medium: Medium): string;
}
