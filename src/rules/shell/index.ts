import type { Rule } from '../rule.js';

export const shellRules: readonly Rule[] = [];
