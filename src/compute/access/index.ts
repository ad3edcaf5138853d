import type { Model } from '../../model/shell.js';
import type { AccessFigures } from './types.js';

export function access(_model: Model): AccessFigures {
  return {
    nodes: [],
    runs: [],
    behind: {},
    coverage: { nodes: 0, nodesInReach: 0, runLengthMm: 0, runLengthInReachMm: 0 },
    assumptions: [],
  };
}
