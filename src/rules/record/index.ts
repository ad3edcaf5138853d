import type { Rule } from '../rule.js';
import { beforeBuild } from './before-build.js';
import { builtUndated } from './built-undated.js';
import { datedAhead } from './dated-ahead.js';
import { lateEntry } from './late-entry.js';
import { lookAlikeIds } from './look-alike-ids.js';
import { photoChanged } from './photo-changed.js';
import { photoDate } from './photo-date.js';
import { photoPointOff } from './photo-point-off.js';
import { photoPointsUnusable } from './photo-points-unusable.js';
import { photoShowsNot } from './photo-shows-not.js';
import { photoTwice } from './photo-twice.js';
import { photoUnrecorded } from './photo-unrecorded.js';
import { recordRepeats } from './repeats.js';
import { sharedHistory } from './shared-history.js';
import { uncommitted } from './uncommitted.js';
import { vinTwice } from './vin-twice.js';
import { wordNotListed } from './word-not-listed.js';

export const recordRules: readonly Rule[] = [
  wordNotListed,
  uncommitted,
  vinTwice,
  lateEntry,
  sharedHistory,
  datedAhead,
  builtUndated,
  recordRepeats,
  beforeBuild,
  photoChanged,
  photoTwice,
  photoDate,
  photoPointOff,
  photoPointsUnusable,
  photoShowsNot,
  photoUnrecorded,
  lookAlikeIds,
];
