import type { Rule } from '../rule.js';

export const findingRules: readonly Rule[] = [];
