import type { Rule } from '../rule.js';

export const accessRules: readonly Rule[] = [];
