import type { Rule } from '../rule.js';

export const orderRules: readonly Rule[] = [];
