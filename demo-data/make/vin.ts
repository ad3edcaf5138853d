import { vinCheckDigit } from '../../src/rules/shell/vin.js';

/** Puts the right digit into position 9 of 17 characters that have a dot there. */
export const withCheckDigit = (pattern: string): string => pattern.replace('.', vinCheckDigit(pattern.replace('.', '0')));
