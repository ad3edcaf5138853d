import type { Rule } from '../rule.js';

export const serviceRules: readonly Rule[] = [];
