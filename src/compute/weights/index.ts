import type { Model } from '../../model/shell.js';
import type { TakeOff } from '../takeoff/types.js';
import { allConditions, heaviestStandard } from './all-conditions.js';
import { assumptions } from './assumptions.js';
import { axleModelOf } from './axle-reactions.js';
import { chooseBasis } from './basis.js';
import { bayAllowances, bayLimits } from './bay-allowances.js';
import { endLimits } from './bay-ends.js';
import { roadLimits } from './bridge.js';
import { budget, reserveOf } from './budget.js';
import { stageOrder, whenBuilt } from './built.js';
import { carrying, solveAxleLoads } from './burden.js';
import { cargo, cargoLabel, waterKg } from './cargo.js';
import { cgHeights } from './cg-height.js';
import { carriageFor, type Judging } from './conditions.js';
import { forecast, growth } from './growth.js';
import { influence } from './influence.js';
import { tanksOf, waterLoad } from './loadings.js';
import { bareUnladen, survey } from './normalise.js';
import { problems } from './problems.js';
import { axleRating } from './ratings.js';
import { massOf, newestVerified, ticketFigure } from './tickets.js';
import type { ConditionFigure, Weights } from './types.js';

/**
 * The vehicle on its axles: predicted from the bare chassis and the take-off, weighed by its tickets, judged by its ratings.
 * Masses in kg, stations in mm rearward of the datum. Nothing is thrown: what cannot be computed is told in `problems`.
 */
export function weights(model: Model, takeOff: TakeOff): Weights {
  const { axles } = model.shell.chassis;
  const items = whenBuilt(model, takeOff.items);
  const ratings = axles.map(axleRating);
  const layout = axleModelOf(axles);
  const carriage = 'carriage' in layout ? layout.carriage : undefined;
  const bare = bareUnladen(model, items);
  const level = model.shell.tickets.filter((ticket) => !ticket.raised);
  const surveys = level.map((ticket) => survey(model, ticket, items, bare, carriage));
  const tickets = surveys.map((one) => ticketFigure(model, one, items, carriage));
  const newest = newestVerified(surveys, (stage) => stageOrder(model, stage));
  const basis = chooseBasis(model, items, bare, newest, surveys, carriage);
  const judging: Judging = { model, ratings, unladen: basis.unladen, judged: basis.kind !== 'none' };
  const conditions = allConditions(judging, basis, items);
  const reserve = reserveOf(model, newest?.ticket.stage);
  const heaviest = heaviestStandard(conditions);
  const unladenKg = solveAxleLoads(basis.unladen.burden, axles, carriage).axlesKg;
  return {
    ratings,
    conditions,
    tickets,
    ...capacity(judging),
    ...trailer(judging, heaviest),
    bays: baysOf(judging),
    growth: growth(model, bare, [...items.values()], tickets),
    ...(judging.judged ? { forecast: forecast(basis.unladen, unladenKg, basis.notWeighed, model, carriage) } : {}),
    influence: carriage ? influence(carriage, axles, ...span(model, takeOff)) : [],
    roadLimits: heaviest
      ? roadLimits(
          axles,
          heaviest.axles.map((axle) => axle.loadKg),
        )
      : [],
    ...(heaviest ? { roadLimitsCondition: heaviest.name } : {}),
    budget: budget(conditions, ratings, reserve),
    reserve,
    cgHeight: cgHeights(model),
    basis: basis.kind,
    ...(newest ? { basisTicket: newest.ticket.id } : {}),
    basisTickets: basis.estimate?.tickets ?? (newest ? [newest.ticket.id] : []),
    endTickets: basis.estimate?.endTickets ?? [],
    assumptions: assumptions(model, basis, reserve),
    problems: problems(model, basis, 'problem' in layout ? layout.problem : undefined, ratings),
  };
}

function capacity({ model, unladen, judged }: Judging): Pick<Weights, 'uvwKg' | 'occcKg' | 'cccKg' | 'fullWaterKg' | 'label'> {
  const { chassis, seats } = model.shell;
  const fullWaterKg = waterKg(tanksOf(model, 'fresh water').map((tank) => tank.capacityM3));
  if (!judged) return { fullWaterKg };
  const uvwKg = massOf(unladen, chassis.axles);
  const belted = seats.filter((seat) => seat.belted).length;
  const label = chassis.gvwrKg === undefined ? undefined : cargoLabel(chassis.gvwrKg, uvwKg, belted, fullWaterKg);
  if (chassis.gvwrKg === undefined || !label) return { uvwKg, fullWaterKg };
  return { uvwKg, ...cargo(chassis.gvwrKg, uvwKg, belted, fullWaterKg), fullWaterKg, label };
}

function trailer({ model, judged }: Judging, heaviest: ConditionFigure | undefined): Pick<Weights, 'trailerKg'> {
  const { gcwrKg } = model.shell.chassis;
  return judged && heaviest && gcwrKg !== undefined ? { trailerKg: gcwrKg - heaviest.totalKg } : {};
}

/** Allowances start from occupants and full fresh water. */
function baysOf({ model, ratings, unladen, judged }: Judging): Weights['bays'] {
  const { bays, chassis } = model.shell;
  const carriage = carriageFor(chassis.axles);
  if (!carriage || !judged) return [];
  const start = carrying(unladen.burden, waterLoad(model));
  const { axlesKg, total } = solveAxleLoads(start, chassis.axles, carriage);
  const limits = bayLimits(bays, carriage, axlesKg, total.massKg, ratings, chassis.gvwrKg);
  return bayAllowances(bays, limits, endLimits(bays, carriage, start, chassis.axles, ratings));
}

/** From the foremost to the rearmost thing on record, mm. */
function span({ shell }: Model, takeOff: TakeOff): readonly [number, number] {
  const { chassis, bays, tanks, seats } = shell;
  const stations = [
    ...chassis.axles.map((axle) => axle.xMm),
    ...[...bays, ...tanks, ...seats].map(({ at }) => at[0]),
    ...takeOff.items.map((item) => item.centroid[0]),
  ];
  return [stations.reduce((a, b) => Math.min(a, b), 0), stations.reduce((a, b) => Math.max(a, b), 0)];
}
