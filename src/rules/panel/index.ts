import type { Rule } from '../rule.js';
import { notFlat } from './not-flat.js';
import { selfCrossing } from './self-crossing.js';

export const panelRules: readonly Rule[] = [selfCrossing, notFlat];
