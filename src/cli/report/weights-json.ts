import type { Assessment } from '../../assess.js';
import type { ConditionFigure } from '../../compute/weights/types.js';
import { envelope, type Json, place3 } from './json.js';

export function weightsJson({ model, figures }: Assessment, revision: string | null): string {
  const { weights } = figures;
  return envelope('weights', model.shell.id, revision, {
    ratings: weights.ratings.map((one) => ({
      axle: one.axle,
      gawr_kg: one.gawrKg,
      tyres_kg: one.tyresKg,
      wheels_kg: one.wheelsKg,
      suspension_kg: one.suspensionKg,
      limit_kg: one.limitKg,
      limited_by: one.limitedBy,
    })),
    conditions: weights.conditions.map(conditionJson),
    tickets: weights.tickets.map((one) => ({
      id: one.id,
      date: one.date,
      stage: one.stage,
      verified: one.verified,
      reason: one.reason,
      as_weighed: one.asWeighed,
      normalised: one.normalised,
      predicted: one.predicted,
      residual: one.residual,
      total_kg: one.totalKg,
      residual_kg: one.residualKg,
      residual_x_mm: one.residualXMm,
      uncertainty_kg: one.uncertaintyKg,
    })),
    uvw_kg: weights.uvwKg,
    occc_kg: weights.occcKg,
    ccc_kg: weights.cccKg,
    full_water_kg: weights.fullWaterKg,
    bays: weights.bays.map((one) => ({
      id: one.id,
      stated_kg: one.statedKg,
      allowance_kg: one.allowanceKg,
      limited_by: one.limitedBy,
      together_kg: one.togetherKg,
    })),
    growth: weights.growth.map((one) => ({
      stage: one.stage,
      predicted_kg: one.predictedKg,
      measured_kg: one.measuredKg,
      uncertainty_kg: one.uncertaintyKg,
    })),
    influence: weights.influence.map((one) => ({ x_mm: one.xMm, adds_kg: one.addsKg })),
    basis: weights.basis,
    basis_ticket: weights.basisTicket,
    assumptions: weights.assumptions,
    problems: weights.problems,
  });
}

function conditionJson(condition: ConditionFigure): Json {
  return {
    name: condition.name,
    total_kg: condition.totalKg,
    centroid_mm: place3(condition.centroid),
    gvwr_margin_kg: condition.gvwrMarginKg,
    uncertainty_kg: condition.uncertaintyKg,
    verdict: condition.verdict,
    steer_share: condition.steerShare,
    axles: condition.axles.map((one) => ({
      axle: one.axle,
      load_kg: one.loadKg,
      limit_kg: one.limitKg,
      margin_kg: one.marginKg,
      uncertainty_kg: one.uncertaintyKg,
      verdict: one.verdict,
      left_kg: one.leftKg,
      right_kg: one.rightKg,
      lifted: one.lifted,
    })),
    contributions: condition.contributions.map(({ name, kg }) => ({ name, kg })),
  };
}
