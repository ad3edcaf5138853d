import type { Rule } from '../rule.js';
import { lapsed } from './lapsed.js';
import { notBound } from './not-bound.js';
import { notVerified } from './not-verified.js';

export const signoffRules: readonly Rule[] = [lapsed, notVerified, notBound];
