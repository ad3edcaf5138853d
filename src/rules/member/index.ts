import type { Rule } from '../rule.js';
import { alloySwapped } from './alloy-swapped.js';
import { bareContact } from './bare-contact.js';
import { bendDoesNotFit } from './bend-does-not-fit.js';
import { certificateMissing } from './certificate-missing.js';
import { clampCheckDue } from './clamp-check-due.js';
import { clampTorqueMissing } from './clamp-torque-missing.js';
import { heatMissing } from './heat-missing.js';
import { lengthDiffers } from './length-differs.js';
import { offcutHeat } from './offcut-heat.js';
import { memberRoleMissing } from './role-missing.js';
import { memberSelfCrossing } from './self-crossing.js';
import { spacing } from './spacing.js';
import { wallThin } from './wall-thin.js';
import { zeroLength } from './zero-length.js';

export const memberRules: readonly Rule[] = [
  zeroLength,
  bendDoesNotFit,
  memberSelfCrossing,
  lengthDiffers,
  wallThin,
  memberRoleMissing,
  spacing,
  alloySwapped,
  heatMissing,
  offcutHeat,
  certificateMissing,
  bareContact,
  clampTorqueMissing,
  clampCheckDue,
];
