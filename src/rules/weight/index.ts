import type { Rule } from '../rule.js';
import { concentratedLoad } from './concentrated-load.js';
import { declaredBelowLoad } from './declared-below-load.js';
import { endsDoNotAdd } from './ends-do-not-add.js';
import { gcwrBelowGvwr } from './gcwr-below-gvwr.js';
import { grossDiffers } from './gross-differs.js';
import { groupApart } from './group-apart.js';
import { leftRight } from './left-right.js';
import { liftedOver } from './lifted-over.js';
import { marginSmall } from './margin-small.js';
import { negativeAxle } from './negative-axle.js';
import { noRating } from './no-rating.js';
import { weightNotVerified } from './not-verified.js';
import { overRating } from './over-rating.js';
import { ratingImprobable } from './rating-improbable.js';
import { readingsDisagree } from './readings-disagree.js';
import { relabel } from './relabel.js';
import { reserveSmall } from './reserve-small.js';
import { scaleOutOfCalibration } from './scale-out-of-calibration.js';
import { seatsOverCapacity } from './seats-over-capacity.js';
import { singleWeighing } from './single-weighing.js';
import { steerShare } from './steer-share.js';
import { tankUseMissing } from './tank-use-missing.js';
import { ticketBeforeStage } from './ticket-before-stage.js';
import { ticketNotVerified } from './ticket-not-verified.js';
import { ticketStale } from './ticket-stale.js';
import { tyresBelowGawr } from './tyres-below-gawr.js';
import { unexplained } from './unexplained.js';
import { wheelEndOver } from './wheel-end-over.js';
import { withinUncertainty } from './within-uncertainty.js';
import { worstOver } from './worst-over.js';

export const weightRules: readonly Rule[] = [
  declaredBelowLoad,
  overRating,
  negativeAxle,
  wheelEndOver,
  tyresBelowGawr,
  ratingImprobable,
  gcwrBelowGvwr,
  noRating,
  tankUseMissing,
  weightNotVerified,
  withinUncertainty,
  marginSmall,
  worstOver,
  liftedOver,
  reserveSmall,
  steerShare,
  leftRight,
  seatsOverCapacity,
  relabel,
  ticketNotVerified,
  scaleOutOfCalibration,
  endsDoNotAdd,
  grossDiffers,
  readingsDisagree,
  unexplained,
  ticketBeforeStage,
  ticketStale,
  singleWeighing,
  groupApart,
  concentratedLoad,
];
