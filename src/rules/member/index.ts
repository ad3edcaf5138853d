import type { Rule } from '../rule.js';
import { lengthDiffers } from './length-differs.js';
import { wallThin } from './wall-thin.js';
import { zeroLength } from './zero-length.js';

export const memberRules: readonly Rule[] = [zeroLength, lengthDiffers, wallThin];
