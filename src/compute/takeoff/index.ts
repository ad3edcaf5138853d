import type { Model } from '../../model/shell.js';
import type { TakeOff } from './types.js';

export function takeOff(_model: Model): TakeOff {
  const nothing = { massKg: 0, centroid: [0, 0, 0] as const, count: 0 };
  return {
    sections: [],
    members: [],
    panels: [],
    runs: [],
    items: [],
    total: nothing,
    byStage: {},
    byAlloy: {},
    bySection: {},
    bySide: { left: nothing, right: nothing },
    assumptions: [],
  };
}
