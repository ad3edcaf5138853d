import type { Rule } from '../rule.js';
import { closedOver } from './closed-over.js';
import { noReinspection } from './no-reinspection.js';
import { undecided } from './undecided.js';

export const findingRules: readonly Rule[] = [undecided, closedOver, noReinspection];
