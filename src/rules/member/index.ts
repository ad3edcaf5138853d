import type { Rule } from '../rule.js';

export const memberRules: readonly Rule[] = [];
