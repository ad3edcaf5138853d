import type { Rule } from '../rule.js';
import { lateEntry } from './late-entry.js';
import { photoDate } from './photo-date.js';
import { photoTwice } from './photo-twice.js';
import { recordRepeats } from './repeats.js';
import { uncommitted } from './uncommitted.js';

export const recordRules: readonly Rule[] = [uncommitted, lateEntry, recordRepeats, photoTwice, photoDate];
