import type { Assessment } from '../../assess.js';
import { GRAVITY } from '../../compute/weights/point-loads.js';
import type { AxleBudget, CargoLabel, ConditionFigure, Forecast, Reconciled } from '../../compute/weights/types.js';
import { envelope, type Json, place3 } from './json.js';

export function weightsJson({ model, figures }: Assessment, revision: string | null, whatIf?: Json): string {
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
      calibration_lapse: one.calibrationLapse,
      as_weighed: one.asWeighed,
      normalised: one.normalised,
      predicted: one.predicted,
      residual: one.residual,
      total_kg: one.totalKg,
      normalised_kg: one.normalisedKg,
      residual_kg: one.residualKg,
      residual_x_mm: one.residualXMm,
      uncertainty_kg: one.uncertaintyKg,
      residual_uncertainty_kg: one.residualUncertaintyKg,
      added_since_kg: one.addedSinceKg,
      reconciled: one.reconciled && reconciledJson(one.reconciled),
    })),
    uvw_kg: weights.uvwKg,
    occc_kg: weights.occcKg,
    ccc_kg: weights.cccKg,
    full_water_kg: weights.fullWaterKg,
    trailer_kg: weights.trailerKg,
    label: weights.label && labelJson(weights.label),
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
    forecast: weights.forecast && forecastJson(weights.forecast),
    influence: weights.influence.map((one) => ({ x_mm: one.xMm, adds_kg: one.addsKg })),
    budget: weights.budget.map(budgetJson),
    reserve: weights.reserve,
    road_limits: weights.roadLimits.map((one) => ({
      kind: one.kind,
      axles: one.axles,
      spread_mm: one.spreadMm,
      load_kg: one.loadKg,
      limit_kg: one.limitKg,
      margin_kg: one.marginKg,
    })),
    road_limits_condition: weights.roadLimitsCondition,
    cg_height: weights.cgHeight.map((one) => ({
      ticket: one.ticket,
      level: one.level,
      height_mm: one.heightMm,
      uncertainty_mm: one.uncertaintyMm,
      refused: one.refused,
    })),
    basis: weights.basis,
    basis_ticket: weights.basisTicket,
    basis_tickets: weights.basisTickets,
    end_tickets: weights.endTickets,
    full_kg: weights.fullKg,
    least: Object.entries(weights.leastKg).map(([axle, kg]) => ({ axle, load_kg: kg })),
    not_loaded_with: weights.notLoadedWith,
    load_lines: weights.loadLines.map((one) => ({
      axle: one.axle,
      end: one.end,
      name: one.name,
      standing: one.standing,
      base_kg: one.baseKg,
      uncertainty_kg: one.uncertaintyKg,
      // By one kilogram: at the datum, and more for each metre aft and to the right of it.
      adds_kg: one.perKg,
      adds_aft_kg: one.perKgMmX * 1000,
      adds_right_kg: one.perKgMmY * 1000,
      limit_kg: one.limitKg,
      tyres: one.tyres,
      tyre_kg: one.tyreKg,
    })),
    point_loads: weights.pointLoads.map((one) => ({
      id: one.id,
      kind: one.kind,
      of_kg: one.ofKg,
      load_kg: one.loadN / GRAVITY,
      rating_kg: one.ratingN === undefined ? undefined : one.ratingN / GRAVITY,
      lifts: one.lifts,
      unbolt_first: one.unboltFirst,
    })),
    full_without_bays_kg: weights.fullWithoutBaysKg,
    with: whatIf,
    assumptions: weights.assumptions,
    problems: weights.problems,
  });
}

function conditionJson(condition: ConditionFigure): Json {
  return {
    name: condition.name,
    kind: condition.kind,
    certified: condition.certified,
    holds: condition.holds,
    worst_for: condition.worstFor,
    worst_end: condition.worstEnd,
    total_kg: condition.totalKg,
    centroid_mm: place3(condition.centroid),
    centroid_uncertainty_mm: condition.centroidUncertaintyMm,
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
      left_uncertainty_kg: one.leftUncertaintyKg,
      right_uncertainty_kg: one.rightUncertaintyKg,
      lifted: one.lifted,
    })),
    contributions: condition.contributions.map(({ name, kg }) => ({ name, kg })),
    end_contributions: condition.endContributions && {
      axle: condition.endContributions.axle,
      end: condition.endContributions.end,
      contributions: condition.endContributions.contributions.map(({ name, kg }) => ({ name, kg })),
    },
  };
}

export const budgetJson = (one: AxleBudget): Json => ({
  axle: one.axle,
  condition: one.condition,
  reserve_kg: one.reserveKg,
  uncertainty_kg: one.uncertaintyKg,
  left_kg: one.leftKg,
  left_end_kg: one.leftEndKg,
  right_end_kg: one.rightEndKg,
  left_end_uncertainty_kg: one.leftEndUncertaintyKg,
  right_end_uncertainty_kg: one.rightEndUncertaintyKg,
});

const labelJson = (label: CargoLabel): Json => ({
  uvw_kg: label.uvwKg,
  uvw_lb: label.uvwLb,
  occc_kg: label.occcKg,
  occc_lb: label.occcLb,
  seats: label.seats,
  seats_kg: label.seatsKg,
  seats_lb: label.seatsLb,
  water_kg: label.waterKg,
  water_lb: label.waterLb,
  ccc_kg: label.cccKg,
  ccc_lb: label.cccLb,
});

const forecastJson = (forecast: Forecast): Json => ({
  allowance_kg: forecast.allowanceKg,
  total_kg: forecast.totalKg,
  low_kg: forecast.lowKg,
  high_kg: forecast.highKg,
  axles: forecast.axles.map((one) => ({ axle: one.axle, load_kg: one.loadKg, low_kg: one.lowKg, high_kg: one.highKg })),
});

const reconciledJson = (reconciled: Reconciled): Json => ({
  agree: reconciled.agree,
  outlier: reconciled.outlier,
  redundancy: reconciled.redundancy,
  chi_square: reconciled.chiSquare,
  readings: reconciled.readings.map((one) => ({
    name: one.name,
    read_kg: one.readKg,
    adjusted_kg: one.adjustedKg,
    normalised_residual: one.normalisedResidual,
  })),
});
