import type { Rule } from '../rule.js';
import { bareEarth } from './bare-earth.js';
import { cavityFull } from './cavity-full.js';
import { gasAluminium } from './gas-aluminium.js';
import { gasJointConcealed } from './gas-joint-concealed.js';
import { jointUnderUnion } from './joint-under-union.js';
import { runLengthDiffers } from './length-differs.js';
import { linkTooSmall } from './link-too-small.js';
import { loadDisagrees } from './load-disagrees.js';
import { nodeMirrored } from './mirrored.js';
import { noGrommet } from './no-grommet.js';
import { noProtection } from './no-protection.js';
import { noSealant } from './no-sealant.js';
import { noSpareWay } from './no-spare-way.js';
import { noSwitch } from './no-switch.js';
import { noTolerance } from './no-tolerance.js';
import { nodeTwice } from './node-twice.js';
import { notPlaced } from './not-placed.js';
import { oneWayLoop } from './one-way-loop.js';
import { outsideEnvelope } from './outside-envelope.js';
import { outsideZone } from './outside-zone.js';
import { protectionBelowLoad } from './protection-below-load.js';
import { protectionFar } from './protection-far.js';
import { protectionTooLarge } from './protection-too-large.js';
import { ring } from './ring.js';
import { roleMisfit } from './role-misfit.js';
import { roleMissing } from './role-missing.js';
import { runUnmarked } from './run-unmarked.js';
import { shareZone } from './share-zone.js';
import { studCrowded } from './stud-crowded.js';
import { supportAtEnd } from './support-at-end.js';
import { supportSpacing } from './support-spacing.js';
import { runsTooClose } from './too-close.js';
import { waterTrapped } from './trapped-water.js';
import { troughUndrained } from './trough-undrained.js';
import { untagged } from './untagged.js';
import { voltageDrop } from './voltage-drop.js';
import { wireBelowWater } from './wire-below-water.js';
import { zoneInsideOut } from './zone-inside-out.js';

export const serviceRules: readonly Rule[] = [
  linkTooSmall,
  notPlaced,
  roleMissing,
  roleMisfit,
  oneWayLoop,
  loadDisagrees,
  outsideEnvelope,
  outsideZone,
  runLengthDiffers,
  protectionTooLarge,
  noProtection,
  protectionBelowLoad,
  voltageDrop,
  runsTooClose,
  shareZone,
  cavityFull,
  noGrommet,
  noSealant,
  waterTrapped,
  noTolerance,
  supportSpacing,
  runUnmarked,
  protectionFar,
  noSwitch,
  ring,
  nodeMirrored,
  nodeTwice,
  zoneInsideOut,
  gasJointConcealed,
  gasAluminium,
  wireBelowWater,
  jointUnderUnion,
  troughUndrained,
  noSpareWay,
  studCrowded,
  bareEarth,
  supportAtEnd,
  untagged,
];
