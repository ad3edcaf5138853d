import type { Rule } from '../rule.js';
import { failed } from './failed.js';
import { missing } from './missing.js';
import { testNotVerified } from './not-verified.js';

export const testRules: readonly Rule[] = [failed, testNotVerified, missing];
