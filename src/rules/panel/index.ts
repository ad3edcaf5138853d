import type { Rule } from '../rule.js';
import { bondDewPoint } from './bond-dew-point.js';
import { bondNotVerified } from './bond-not-verified.js';
import { bondTime } from './bond-time.js';
import { notFlat } from './not-flat.js';
import { selfCrossing } from './self-crossing.js';

export const panelRules: readonly Rule[] = [selfCrossing, notFlat, bondDewPoint, bondTime, bondNotVerified];
