export { behind } from './behind.js';
export { isolate } from './isolate.js';
export { near } from './near.js';
export type { Isolation, IsolationAction, Match, MatchQuality, NearHit, NearKind, ProtectionFound } from './types.js';
export { where } from './where.js';
