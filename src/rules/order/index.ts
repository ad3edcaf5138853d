import type { Rule } from '../rule.js';
import { adhesiveExpired } from './adhesive-expired.js';
import { evidenceStale } from './evidence-stale.js';
import { instrumentOutOfCalibration } from './instrument-out-of-calibration.js';
import { orderNotVerified } from './not-verified.js';
import { photoAfterCloseIn } from './photo-after-close-in.js';
import { photoGap } from './photo-gap.js';
import { testAfterCloseIn } from './test-after-close-in.js';

export const orderRules: readonly Rule[] = [
  photoAfterCloseIn,
  photoGap,
  testAfterCloseIn,
  orderNotVerified,
  evidenceStale,
  adhesiveExpired,
  instrumentOutOfCalibration,
];
