import type { Rule } from '../rule.js';
import { gussetMissing } from './gusset-missing.js';
import { gussetPhoto } from './gusset-photo.js';
import { notMeasured } from './not-measured.js';
import { outOfSquare } from './out-of-square.js';
import { sag } from './sag.js';

export const openingRules: readonly Rule[] = [outOfSquare, sag, gussetMissing, gussetPhoto, notMeasured];
