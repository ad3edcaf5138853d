import type { Model } from '../../model/shell.js';
import { dateWords, mass, percent, type UnitSystem } from '../../quantity/format.js';
import { KG_PER_LB } from '../../quantity/units.js';
import type { Axle } from '../../records/index.js';
import type { Basis } from './basis.js';
import { wheelCount } from './ratings.js';
import { holdsGas, tankRole } from './tanks.js';

/** `Wheels of axle drive: 4 × 7,400 lb.` */
function wheelWords(axle: Axle, units: UnitSystem): string {
  const rating = mass(axle.wheelsKg as number, units);
  if (axle.wheelsBy === 'axle') return `Wheels of axle ${axle.id} are rated ${rating} for the axle.`;
  const each = `Wheels of axle ${axle.id} are rated ${rating} each, ${wheelCount(axle)} of them`;
  return axle.wheelsBy === 'wheel'
    ? `${each}.`
    : `${each}: not recorded whether by wheel or by axle. Add \`wheels_by: wheel | axle\`.`;
}

/** What the figures assume, in sentences for every place where they are shown. */
export function assumptions(model: Model, basis: Basis, reserve: number, plannedKg = 0): readonly string[] {
  const { chassis, tanks, seats } = model.shell;
  if (chassis.axles.length === 0) return [];
  const { units } = model.shop;
  const shared = chassis.axles.filter((axle) => axle.share);
  const liftable = chassis.axles.filter((axle) => axle.lift);
  const unsaid = tanks.filter((tank) => tank.use === undefined);
  const taken = tanks.filter((tank) => tank.isDensityTaken);
  const odd = tanks.filter((tank) => tankRole(tank) === 'other');
  const unlimited = model.shell.bays.filter((bay) => bay.limitKg === undefined);
  return [
    basisText(model, basis),
    ...(plannedKg > 0 ? [`${mass(plannedKg, units)} is planned and not in it yet: counted in the forecast alone.`] : []),
    'Unladen means full fuel and operating fluids, liquid petroleum gas among them; water is cargo.',
    ...taken.map(
      ({ id, contents, densityKgM3 }) =>
        `Not proved: the mass of tank ${id}. \`${contents}\` is not in the list of contents and no \`density\` is recorded: taken as ${Math.round(densityKgM3)} kg/m³, the heaviest in the list.`,
    ),
    ...(tanks.some(holdsGas) ? ['Tanks of liquid petroleum gas are full at 80 % of their capacity.'] : []),
    ...(chassis.bare && !chassis.bare.condition.fuelKnown
      ? ['The bare chassis does not say how much fuel was in it: it is taken as empty, and a full tank is added.']
      : []),
    ...(seats.some((seat) => seat.belted)
      ? [`Each belted seat counts ${mass(68, units)} (49 CFR ${seatLaw(chassis.gvwrKg)}).`]
      : []),
    ...shared.map(
      (axle) =>
        `Axle ${axle.id} takes ${percent(axle.share?.fraction ?? 0, 0)} of the load that it shares with ${axle.share?.with}, as stated.`,
    ),
    ...chassis.axles.filter(({ wheelsKg }) => wheelsKg !== undefined).map((axle) => wheelWords(axle, units)),
    ...liftable.map(
      (axle) => `When ${axle.id} is up, none of it is on the road: its own mass hangs on the frame and the other axles carry it.`,
    ),
    ...(chassis.axles.some((axle) => axle.trackMm !== undefined)
      ? [
          'Left and right: an end that was weighed is as weighed; any other moment to a side is shared between axles in proportion to their unladen load (± 25 mm).',
        ]
      : []),
    ...(chassis.axles.some((axle) => axle.tyres?.inflationPa !== undefined && axle.tyres.inflationForIndexPa !== undefined)
      ? ['Tire load below its reference pressure follows (P/Pref) to the power 0.8; the tire maker’s own table goes first.']
      : []),
    ...(chassis.axles.some(
      (axle) => axle.tyres && (axle.tyres.inflationPa === undefined || axle.tyres.inflationForIndexPa === undefined),
    )
      ? ['Without recorded pressures, tires are taken at their full load index.']
      : []),
    ...(unsaid.length > 0
      ? [
          `Not recorded what tanks ${unsaid.map((tank) => tank.id).join(', ')} are used for: taken from what they hold. Add \`use: fresh | waste | fuel | gas | fluid\`.`,
        ]
      : []),
    ...(odd.length > 0
      ? [`Tanks ${odd.map((tank) => tank.id).join(', ')} are empty in every condition that does not name them.`]
      : []),
    ...(model.shell.bays.length > 0
      ? [
          'Bay allowances keep axles, their ends, tires, GVWR and the bays’ own limits with any tank at any level, any seat taken or not, slide-outs in or out; any bay may be empty, none counts on another to balance it. They leave no room for the uncertainty.',
        ]
      : []),
    ...(chassis.gcwrKg === undefined
      ? []
      : [
          'What the GCWR leaves for a trailer does not cover the hitch, its load on the rear axle, or brakes: see the chassis maker.',
        ]),
    ...(unlimited.length > 0
      ? [`Bays without a stated limit (${unlimited.map((bay) => bay.id).join(', ')}) are empty in \`loaded\`.`]
      : []),
    'Uncertainties are expanded (k = 2), root sum of squares of independent sources: steps of the scale, its tolerance (one error for all readings of a scale), levels of tanks at the weighing (± 5 %, full ± 2 %), masses and places by basis, stated shares of load (± 2 %), and in full what the records do not explain of a weighing.',
    'Height of the center of gravity counts the bare chassis at the top of its rails: not for stability.',
    `Budget: ${percent(reserve, 0)} of each axle’s rating is held in reserve, plus the expanded uncertainty of its load.`,
    'Road limits are those of the United States Interstate system, information only: states and provinces differ.',
  ];
}

/** 571.110 ends at 10,000 lb of GVWR; above it 571.120 S10 has the motor home, 567.4(g)(3) the mass of an occupant. */
const seatLaw = (gvwrKg: number | undefined): string =>
  gvwrKg !== undefined && gvwrKg <= 10_000 * KG_PER_LB ? '571.110 S3' : '571.120 S10, 567.4(g)(3)';

function basisText(model: Model, { kind, survey, estimate, notWeighed }: Basis): string {
  const addedKg = notWeighed.reduce((sum, item) => sum + item.massKg, 0);
  const added = mass(addedKg, model.shop.units);
  if (kind === 'ticket' && survey) {
    const since = addedKg > 0 ? `, and ${added} that the records put on since` : '';
    const scale = survey.ticket.scale === undefined ? ' It names no scale: 50 kg steps and 0.5 % are taken.' : '';
    const many = (estimate?.tickets.length ?? 0) > 1;
    const from = many
      ? `tickets ${estimate?.tickets.join(', ')}, reconciled by least squares`
      : `ticket ${survey.ticket.id} of ${dateWords(survey.ticket.date)}`;
    const against = estimate?.contradicted ?? [];
    const apart =
      against.length > 0
        ? ` Ticket ${against.join(', ')} of the same stage contradicts it: what they differ by is in the uncertainty.`
        : '';
    const ends = (estimate?.endTickets ?? []).filter((id) => !estimate?.tickets.includes(id) || many);
    const kept = ends.length > 0 ? ` Wheel ends are those weighed for ${ends.join(', ')}, with what was added since.` : '';
    return `Conditions start from ${from}, brought to unladen${since}.${kept}${apart}${scale}`;
  }
  if (kind === 'prediction') {
    return `Conditions are predicted from the bare chassis (each reading ± 1 %) and ${added} on record. No ticket is verified.`;
  }
  return `No bare chassis and no verified ticket: loads are those of the ${added} on record alone, and are judged by nothing.`;
}
