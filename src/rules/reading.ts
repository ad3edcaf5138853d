import type { Rule } from './rule.js';

/** What reading finds before any rule looks: whether something is missing, and what is found. The shop's papers are the administrator's. */
export const READING: Readonly<Record<string, Pick<Rule, 'asks' | 'finds'>>> = {
  'format.yaml': { asks: 'defect', finds: 'A file that is not YAML, or uses a part of YAML that records do not.' },
  'format.conflict': {
    asks: 'defect',
    finds: 'A file with the marks of an unfinished merge; they show which versions conflict.',
  },
  'format.comma-slip': { asks: 'defect', finds: 'A thousands comma that split a value in two inside `{…}` or `[…]`.' },
  'format.duplicate-key': { asks: 'defect', finds: 'A key that a record has twice.' },
  'format.unreadable': { asks: 'missing', finds: 'A file that cannot be read: too large, not UTF-8, a link out of the store.' },
  'format.file-name': {
    asks: 'missing',
    finds: 'A file whose name or place is not part of a store, so nothing reads it.',
  },
  'format.missing-file': {
    asks: 'missing',
    finds: 'A file that a record names, or that every shell has, and that is not there.',
  },
  'format.missing-key': { asks: 'missing', finds: 'A record without a key that it must have.' },
  'format.unknown-key': { asks: 'defect', finds: 'A key that its record does not have; the nearest one is named.' },
  'format.wrong-value': { asks: 'defect', finds: 'A value of another form than its key has.' },
  'format.unit-missing': { asks: 'missing', finds: 'A bare number where a quantity is asked for, in a file without `units`.' },
  'format.duplicate-id': { asks: 'defect', finds: 'An id that two records of a shell, or of a library list, have.' },
  'format.unknown-reference': { asks: 'defect', finds: 'An id that no record has; the nearest one is named.' },
};
