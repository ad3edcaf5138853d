export { behind } from './behind.js';
export { isolate } from './isolate.js';
export { near } from './near.js';
export { type StillLive, stillLive } from './still-live.js';
export type { Isolation, IsolationAction, Match, MatchQuality, NearHit, NearKind, ProtectionFound } from './types.js';
export { upstream } from './upstream.js';
export { where } from './where.js';
