import { ACCESS } from './access.js';
import { APART } from './apart.js';
import { CIRCUITS } from './circuits.js';
import { JOINTS_AND_TROUGHS } from './joints-and-troughs.js';
import { MEMBERS } from './members.js';
import { OPENINGS } from './openings.js';
import { PAPERS, SIGNOFFS } from './papers.js';
import type { Plant } from './plant.js';
import { SKINS } from './skins.js';
import { WEIGHTS } from './weights.js';
import { type WeldChoice, welds } from './welds.js';

export type { Plant, WeldChoice };

/** Every mistake put into OV-024, in the order in which the records are spoiled. */
export const planted = (choice: WeldChoice): readonly Plant[] => [
  ...ACCESS,
  ...CIRCUITS,
  ...APART,
  ...JOINTS_AND_TROUGHS,
  ...MEMBERS,
  ...welds(choice),
  ...OPENINGS,
  ...PAPERS,
  ...SKINS,
  ...WEIGHTS,
  ...SIGNOFFS,
];
