import type { Rule } from '../rule.js';
import { gvwrAboveAxles } from './gvwr-above-axles.js';
import { gvwrMissing } from './gvwr-missing.js';
import { vinCheckDigitRule } from './vin-check-digit.js';
import { vinForm } from './vin-form.js';
import { vinMissing } from './vin-missing.js';

export const shellRules: readonly Rule[] = [vinForm, vinCheckDigitRule, vinMissing, gvwrMissing, gvwrAboveAxles];
