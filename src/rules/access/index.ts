import type { Rule } from '../rule.js';
import { blocked } from './blocked.js';
import { hotPart } from './hot-part.js';
import { movingNotVerified } from './moving-not-verified.js';
import { movingPart } from './moving-part.js';
import { namedPanelDoesNotReach } from './named-panel-does-not-reach.js';
import { noPanelOverBay } from './no-panel-over-bay.js';
import { accessNotVerified } from './not-verified.js';
import { unreached } from './unreached.js';

export const accessRules: readonly Rule[] = [
  unreached,
  namedPanelDoesNotReach,
  blocked,
  noPanelOverBay,
  movingPart,
  hotPart,
  movingNotVerified,
  accessNotVerified,
];
