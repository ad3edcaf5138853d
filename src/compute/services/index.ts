import type { Model } from '../../model/shell.js';
import type { TakeOff } from '../takeoff/types.js';
import type { ServicesFigures } from './types.js';

export function services(_model: Model, _takeOff: TakeOff): ServicesFigures {
  return { circuits: [], zones: [], tooClose: [], sharedZones: [], trapped: [], crossings: [], assumptions: [] };
}
