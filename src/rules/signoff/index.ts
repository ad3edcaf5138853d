import type { Rule } from '../rule.js';
import { lapsed } from './lapsed.js';
import { notVerified } from './not-verified.js';

export const signoffRules: readonly Rule[] = [lapsed, notVerified];
