import { PIPE_WORDS } from './pipe-material.js';
import { CONTENTS_WORDS } from './tank-contents.js';

/**
 * Words that answers stand on. A word outside its list is kept as typed and decides nothing; new entry offers the list. Published in the
 * schema of each field.
 */
export const CLOSED_LISTS = {
  protection: ['fuse', 'breaker', 'regulator', 'relief valve', 'pressure switch', 'thermal cut-out'],
  wall: ['left', 'right', 'front', 'rear', 'roof', 'floor', 'partition'],
  opening: [
    ...['slide-out', 'door', 'entry door', 'loading door', 'bay door', 'hatch', 'roof hatch'],
    ...['window', 'escape window', 'skylight', 'vent', 'roof unit'],
  ],
  clamp: ['U-bolt', 'bolt', 'plate', 'damper mount', 'strap', 'clip'],
  material: [
    ...[
      'aluminium',
      'aluminum',
      'steel',
      'mild steel',
      'carbon steel',
      'galvanised steel',
      'galvanized steel',
      'iron',
      'cast iron',
    ],
    ...['stainless', 'stainless steel', 'copper', 'brass', 'bronze'],
    ...['plywood', 'timber', 'composite', 'fibreglass', 'fiberglass', 'plastic', 'rubber', 'foam', 'glass'],
  ],
  declared: ['lift', 'jack', 'stand', 'tow', 'tie down', 'mounting', 'wall load', 'floor load', 'roof load', 'label'],
  fixing: ['bonded', 'screws', 'rivets', 'bolts', 'bonded and screws', 'bonded and rivets', 'welded', 'clips', 'hinged'],
  test: [
    ...['pressure hold', 'pressure', 'drop', 'continuity', 'insulation', 'dielectric withstand', 'polarity', 'gas appliances'],
    ...['rain', 'function', 'coupon pull', 'torque', 'flow', 'earth bond'],
  ],
  /** Of inspection, by their letters in ISO 9712. */
  method: ['VT', 'PT', 'MT', 'RT', 'UT', 'ET', 'LT'],
  contents: CONTENTS_WORDS,
  pipe: PIPE_WORDS,
} as const;

export type ClosedList = keyof typeof CLOSED_LISTS;
export type TestKind = (typeof CLOSED_LISTS.test)[number];

export const isListed = (list: ClosedList, word: string): boolean => (CLOSED_LISTS[list] as readonly string[]).includes(word);
