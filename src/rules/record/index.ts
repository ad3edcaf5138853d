import type { Rule } from '../rule.js';
import { uncommitted } from './uncommitted.js';

export const recordRules: readonly Rule[] = [uncommitted];
