import type { LibraryList, ShellList } from '../store/layout.js';
import type { Kind } from './kinds.js';

/** Which kind of record a list holds, by the list's name. */
export const KIND_IN: Readonly<Record<string, Kind>> = {
  materials: 'material',
  certificates: 'certificate',
  sections: 'section',
  conductors: 'conductor',
  procedures: 'procedure',
  people: 'person',
  instruments: 'instrument',
  stages: 'stage',
  rules: 'rule',
  zones: 'zone',
  members: 'member',
  welds: 'weld',
  panels: 'panel',
  openings: 'opening',
  components: 'component',
  weights: 'ticket',
  tests: 'test',
  findings: 'finding',
  signoffs: 'signoff',
  amendments: 'amendment',
  declared: 'declared',
  clamps: 'clamp',
  photos: 'photo',
} satisfies Record<LibraryList | ShellList, Kind>;
