import type { Rule } from '../rule.js';

export const weightRules: readonly Rule[] = [];
