import type { Surface } from '../../compute/access/surfaces.js';
import type { PanelReach } from '../../compute/access/types.js';
import type { CircuitFigure } from '../../compute/services/types.js';
import type { Vec3 } from '../../geometry/vector.js';
import type { RecordKind } from '../../records/index.js';
import type { Fact } from '../topics/topic.js';

export type { Isolation, IsolationAction, IsolationStep, Unknown } from '../isolate/types.js';
export type { Fact, Topic, TopicAnswer, TopicRow } from '../topics/topic.js';

/** How a record matched what was asked: by its whole id, name or marking, by its start, by a part of it, or nearly. */
export type MatchQuality = 'exact' | 'prefix' | 'contains' | 'close';

/** What protects a circuit, and where it is. */
export interface ProtectionFound {
  readonly circuit: string;
  /** fuse, breaker, regulator … as the shop says. */
  readonly kind: string;
  readonly ratingA?: number;
  /** Node where it sits. */
  readonly at?: string;
  /** Panels that reach it, best first; empty where it stands in the open, or nobody knows where it is. */
  readonly panels: readonly PanelReach[];
  readonly open: boolean;
}

export interface Match {
  readonly id: string;
  readonly kind: RecordKind;
  readonly quality: MatchQuality;
  readonly name?: string;
  readonly marking?: string;
  /** The service that it belongs to, by id. */
  readonly service?: string;
  readonly position?: Vec3;
  /** Where it is, in words. */
  readonly place?: string;
  /** Of a panel: the surface that it belongs to. */
  readonly surface?: Surface;
  /** Access panels that open onto it, best first. */
  readonly panels: readonly PanelReach[];
  /** True for a node or run that lies open and needs no panel. */
  readonly open: boolean;
  /** For a run: the fewest panels to follow its whole way, in order. */
  readonly follow: readonly string[];
  readonly protection?: ProtectionFound;
  /** Of a run its way; of a circuit the way to its worst load; of a member on a line its line. Empty for the rest. */
  readonly path: readonly Vec3[];
  readonly lengthMm?: number;
  /** For a circuit. */
  readonly circuit?: CircuitFigure;
  /** Ends, make, fasteners, fill, tests, repairs: what the kind of record has. */
  readonly facts: readonly Fact[];
}

export type NearKind = 'run' | 'node' | 'member' | 'panel' | 'component' | 'tank' | 'bay' | 'rail' | 'cross member' | 'zone';

/** Something within a distance of a point. */
export interface NearHit {
  readonly id: string;
  readonly kind: NearKind;
  /** To its outside; 0 within it. */
  readonly distanceMm: number;
  /** The place of its outside nearest to the point; the point itself within it. */
  readonly nearest: Vec3;
  /** How well its place is known, where that was recorded: the true distance may be so much less. */
  readonly toleranceMm?: number;
}
