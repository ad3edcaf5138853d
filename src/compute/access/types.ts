import type { Vec3 } from '../../geometry/vector.js';

export type Reach = 'hand' | 'forearm' | 'arm' | 'beyond';

export interface PanelReach {
  /** The access panel. */
  readonly panel: string;
  readonly distanceMm: number;
  readonly reach: Reach;
  /** Members, panels, components or runs that stand in the line of reach. Empty: clear, or beyond reach and not looked for. */
  readonly blockedBy: readonly string[];
  /** How well the place is known, where recorded: the reach is judged as if it lay so much further. */
  readonly toleranceMm?: number | undefined;
  /** Where clear: a hand closed on a tool gets there as well. */
  readonly tool?: boolean | undefined;
  /** Where clear: both hands get there. */
  readonly twoHands?: boolean | undefined;
  /** What stands before the panel. */
  readonly approach?: Approach | undefined;
}

/** What stands before an access panel, from where a person can be. */
export interface Approach {
  /** A person comes to it, once what comes off or moves has been taken away. */
  readonly clear: boolean;
  /** What stands before it and does not come off, by id. */
  readonly blockedBy: readonly string[];
  /** Panels that come off first. */
  readonly removeFirst: readonly string[];
  /** Slide-outs that must be run in or out first. */
  readonly moveFirst: readonly string[];
  readonly from: 'outside' | 'under the coach' | 'on the roof' | 'inside';
}

export interface NodeAccess {
  readonly id: string;
  /** Every access panel near enough to matter, best first (clear before blocked, then nearest). */
  readonly panels: readonly PanelReach[];
  /** True when one of them reaches it clear. */
  readonly inReach: boolean;
  /** True when it stands exposed: in no concealed zone, and a hand gets to it from the room or from outside. No panel is needed. */
  readonly open: boolean;
  /** False where its place is not on record: nothing was looked for. */
  readonly placed?: false;
}

export interface RunAccess {
  readonly id: string;
  readonly lengthMm: number;
  readonly inReachMm: number;
  /** Of it, what lies in no concealed zone and needs no panel. */
  readonly openMm?: number;
  readonly panels: readonly PanelReach[];
  /** Fewest panels that open the whole way (set cover), by id, in order along the run. */
  readonly follow: readonly string[];
}

export interface BehindItem {
  readonly id: string;
  readonly kind: 'node' | 'run' | 'member' | 'component' | 'tank' | 'bay' | 'rail' | 'cross member' | 'zone';
  readonly distanceMm: number;
  readonly reach: Reach;
  readonly blockedBy: readonly string[];
  readonly nearest: Vec3;
  readonly toleranceMm?: number | undefined;
  readonly tool?: boolean | undefined;
  readonly twoHands?: boolean | undefined;
  readonly approach?: Approach | undefined;
}

export interface AccessFigures {
  readonly nodes: readonly NodeAccess[];
  readonly runs: readonly RunAccess[];
  /** Access panel id → what stands before it. */
  readonly approaches: Readonly<Record<string, Approach>>;
  /** Access panel id → what is behind it, nearest first. */
  readonly behind: Readonly<Record<string, readonly BehindItem[]>>;
  readonly coverage: {
    readonly nodes: number;
    readonly nodesInReach: number;
    readonly runLengthMm: number;
    readonly runLengthInReachMm: number;
  };
  readonly assumptions: readonly string[];
}
