import type { Rule } from '../rule.js';

export const weldRules: readonly Rule[] = [];
