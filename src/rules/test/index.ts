import type { Rule } from '../rule.js';

export const testRules: readonly Rule[] = [];
