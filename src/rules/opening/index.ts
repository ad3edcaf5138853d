import type { Rule } from '../rule.js';

export const openingRules: readonly Rule[] = [];
