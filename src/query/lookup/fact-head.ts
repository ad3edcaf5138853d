import { getOwn } from '../../get-own.js';
import type { Fact } from './types.js';

/** Heads that make keys of JSON, in the words that people read. */
const HEADS: Readonly<Record<string, string>> = { 'known to': 'located ±', 'sources left': 'live sources left' };

export const factHead = ({ head }: Pick<Fact, 'head'>): string => getOwn(HEADS, head) ?? head;
