import type { Model } from '../../model/shell.js';
import type { RecordBase } from '../../records/index.js';
import type { MassItem, TakeOff } from '../takeoff/types.js';
import { allConditions, heaviestStandard } from './all-conditions.js';
import { assumptions } from './assumptions.js';
import { axleModelOf } from './axle-reactions.js';
import { chooseBasis } from './basis.js';
import { bayAllowances, bayLimits } from './bay-allowances.js';
import { roadLimits } from './bridge.js';
import { budget, liftedMargins, reserveOf } from './budget.js';
import { stageOrder, whenBuilt } from './built.js';
import { cargo, cargoLabel, waterKg } from './cargo.js';
import { cgHeights } from './cg-height.js';
import type { Judging } from './conditions.js';
import { forecast, growth, withPlanned } from './growth.js';
import { influence } from './influence.js';
import type { Load } from './load.js';
import { loadLines } from './load-lines.js';
import { tanksOf } from './loadings.js';
import { bareUnladen, survey } from './normalise.js';
import { heaviest, pointLoads, shellAlone } from './point-loads.js';
import { problems } from './problems.js';
import { axleRating } from './ratings.js';
import { gaugeOf, loadRangeOf, searchStates } from './search-states.js';
import { massOf, newestVerified, ticketFigure } from './tickets.js';
import type { ConditionFigure, Weights } from './types.js';
import { carrying, solveAxleLoads, totalOf } from './vehicle-load.js';
import { type Search, worstCases } from './worst-cases.js';

const NO_SEARCH: Search = { cases: [], shut: [], open: [] };

/**
 * The vehicle on its axles: predicted from the bare chassis and the take-off, weighed by its tickets, judged by its ratings.
 * Masses in kg, stations in mm rearward of the datum. Nothing is thrown: what cannot be computed is told in `problems`.
 */
export function weights(model: Model, takeOff: TakeOff): Weights {
  const { axles } = model.shell.chassis;
  const isPlanned = ({ id }: MassItem): boolean =>
    (model.shell.byId.get(id)?.record as Partial<RecordBase> | undefined)?.planned === true;
  const planned = takeOff.items.filter(isPlanned);
  const items = whenBuilt(model, planned.length === 0 ? takeOff.items : takeOff.items.filter((item) => !isPlanned(item)));
  const ratings = axles.map(axleRating);
  const layout = axleModelOf(axles);
  const axleModel = 'axleModel' in layout ? layout.axleModel : undefined;
  const bare = bareUnladen(model, items);
  const level = model.shell.tickets.filter((ticket) => !ticket.raised);
  const surveys = level.map((ticket) => survey(model, ticket, items, bare, axleModel));
  const tickets = surveys.map((one) => ticketFigure(model, one, items, axleModel));
  const newest = newestVerified(surveys, (stage) => stageOrder(model, stage));
  const basis = chooseBasis(model, items, bare, newest, surveys, axleModel);
  const judging: Judging = { model, ratings, unladen: basis.unladen, judged: basis.kind !== 'none' };
  const search = judging.judged ? worstCases(judging, searchStates(model, items)) : NO_SEARCH;
  const conditions = allConditions(judging, basis, items, search);
  const reserve = reserveOf(model, newest?.ticket.stage);
  const heaviest = heaviestStandard(conditions);
  return {
    ratings,
    conditions,
    tickets,
    ...capacity(judging),
    ...trailer(judging, heaviest),
    bays: baysOf(judging, search),
    growth: growth(model, bare, [...items.values()], tickets),
    ...(judging.judged
      ? { forecast: forecast(withPlanned(basis.unladen, planned), [...basis.notWeighed, ...planned], model, axleModel) }
      : {}),
    plannedKg: planned.reduce((sum, item) => sum + item.massKg, 0),
    influence: axleModel ? influence(axleModel, axles, ...span(model, takeOff)) : [],
    roadLimits: heaviest
      ? roadLimits(
          axles,
          heaviest.axles.map((axle) => axle.loadKg),
        )
      : [],
    ...(heaviest ? { roadLimitsCondition: heaviest.name } : {}),
    budget: budget(search.cases, conditions, ratings, reserve),
    liftedMargins: liftedMargins(search.cases, ratings, reserve),
    notLoadedWith: [...new Set(search.shut.map((state) => [...state.lifted].map((id) => `${id} up`).join(', ')))],
    ...extremes(judging, search),
    loadLines: loadLines(judging, search),
    pointLoads: pointLoads(model, heaviestUnladen(judging, conditions), shellAlone([...items.values()]), [...items.values()]),
    reserve,
    cgHeight: cgHeights(model),
    basis: basis.kind,
    ...(newest ? { basisTicket: newest.ticket.id } : {}),
    basisTickets: basis.estimate?.tickets ?? (newest ? [newest.ticket.id] : []),
    endTickets: basis.estimate?.endTickets ?? [],
    assumptions: assumptions(
      model,
      basis,
      reserve,
      planned.reduce((sum, item) => sum + item.massKg, 0),
    ),
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

/** Allowances hold with every belted seat taken and fresh water full, and with any other level of any tank. */
function baysOf({ model, ratings, unladen, judged }: Judging, { open }: Search): Weights['bays'] {
  if (open.length === 0 || !judged) return [];
  return bayAllowances(model.shell.bays, bayLimits(model, unladen, open, ratings));
}

/** The unladen vehicle at the heavy end of what is known of it; nothing where nothing weighed says what it is. */
function heaviestUnladen({ model, unladen, judged }: Judging, conditions: readonly ConditionFigure[]): Load | undefined {
  if (!judged) return undefined;
  const uncertaintyKg = conditions.find((one) => one.name === 'unladen' && one.kind === 'standard')?.uncertaintyKg ?? 0;
  return heaviest(totalOf(unladen.vehicleLoad, model.shell.chassis.axles), uncertaintyKg);
}

/** The mass of everything full, and the least that each axle carries in any way of loading. */
function extremes({ model, unladen }: Judging, { open }: Search): Pick<Weights, 'fullKg' | 'fullWithoutBaysKg' | 'leastKg'> {
  const { axles } = model.shell.chassis;
  const { sharedAs } = unladen.vehicleLoad;
  const first = open[0];
  if (!first || !sharedAs) return { leastKg: {} };
  const least = (at: number): number =>
    Math.min(
      ...open
        .filter((state) => !state.lifted.has(axles[at]?.id ?? ''))
        .map((state) => {
          const { axlesKg } = solveAxleLoads(carrying(unladen.vehicleLoad, state.moved), axles, state.axleModel);
          const name = axles[at]?.id ?? '';
          return (
            (axlesKg[at] as number) + loadRangeOf(state.choices, gaugeOf(state.axleModel, sharedAs, { axle: at, name })).least
          );
        }),
    );
  return {
    fullKg: massOf(unladen, axles) + loadRangeOf(first.choices, (load) => load.massKg).most,
    fullWithoutBaysKg:
      massOf(unladen, axles) +
      loadRangeOf(
        first.choices.filter((choice) => choice.kind !== 'bay'),
        (load) => load.massKg,
      ).most,
    leastKg: Object.fromEntries(axles.map((axle, at) => [axle.id, least(at)])),
  };
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
