import type { Rule } from '../rule.js';
import { noReinspection } from './no-reinspection.js';
import { undecided } from './undecided.js';

export const findingRules: readonly Rule[] = [undecided, noReinspection];
