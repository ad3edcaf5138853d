import type { Rule } from '../rule.js';
import { continuityLapsed } from './continuity-lapsed.js';
import { drilledNearWeld } from './drilled-near.js';
import { fillerUnsuited } from './filler-unsuited.js';
import { filletSmall } from './fillet-small.js';
import { inspectionOrder } from './inspection-order.js';
import { inspectionShare } from './inspection-share.js';
import { inspectorUnqualified } from './inspector-unqualified.js';
import { jointUnrecorded } from './joint-unrecorded.js';
import { longerThanJoint } from './longer-than-joint.js';
import { membersApart } from './members-apart.js';
import { notInspected } from './not-inspected.js';
import { offJoint } from './off-joint.js';
import { ownInspection } from './own-inspection.js';
import { procedureDoesNotCover } from './procedure-does-not-cover.js';
import { rejectedOpen } from './rejected-open.js';
import { welderUnqualified } from './welder-unqualified.js';

export const weldRules: readonly Rule[] = [
  membersApart,
  offJoint,
  rejectedOpen,
  notInspected,
  ownInspection,
  inspectorUnqualified,
  inspectionOrder,
  inspectionShare,
  welderUnqualified,
  continuityLapsed,
  procedureDoesNotCover,
  fillerUnsuited,
  filletSmall,
  longerThanJoint,
  drilledNearWeld,
  jointUnrecorded,
];
