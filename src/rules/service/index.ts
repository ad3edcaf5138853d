import type { Rule } from '../rule.js';
import { cavityFull } from './cavity-full.js';
import { lengthDiffers } from './length-differs.js';
import { noGrommet } from './no-grommet.js';
import { noProtection } from './no-protection.js';
import { noTolerance } from './no-tolerance.js';
import { outsideEnvelope } from './outside-envelope.js';
import { outsideZone } from './outside-zone.js';
import { protectionBelowLoad } from './protection-below-load.js';
import { protectionTooLarge } from './protection-too-large.js';
import { runUnmarked } from './run-unmarked.js';
import { shareZone } from './share-zone.js';
import { supportSpacing } from './support-spacing.js';
import { tooClose } from './too-close.js';
import { trappedWater } from './trapped-water.js';
import { voltageDrop } from './voltage-drop.js';

export const serviceRules: readonly Rule[] = [
  outsideEnvelope,
  outsideZone,
  lengthDiffers,
  protectionTooLarge,
  noProtection,
  protectionBelowLoad,
  voltageDrop,
  tooClose,
  shareZone,
  cavityFull,
  noGrommet,
  trappedWater,
  noTolerance,
  supportSpacing,
  runUnmarked,
];
