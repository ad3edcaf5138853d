import type { Rule } from '../rule.js';
import { lapsed } from './lapsed.js';
import { notBound } from './not-bound.js';
import { signoffNotVerified } from './not-verified.js';

export const signoffRules: readonly Rule[] = [lapsed, signoffNotVerified, notBound];
