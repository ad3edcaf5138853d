import type { Model } from '../../model/shell.js';
import type { JointFigures, OpeningFigure, WeldTotals } from './types.js';

export function joints(_model: Model): JointFigures {
  return { joints: [], found: 0, recorded: 0, missing: [], withoutJoint: [] };
}

export function openings(_model: Model): readonly OpeningFigure[] {
  return [];
}

export function weldTotals(_model: Model): WeldTotals {
  return { count: 0, jointsCount: 0, lengthMm: 0, depositedKg: 0, byProcess: {} };
}
