import type { Rule } from '../rule.js';

export const panelRules: readonly Rule[] = [];
