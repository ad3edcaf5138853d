import type { Form } from '../schema/kinds.js';
import { densityOf } from './defaults.js';
import { mapCondition, mapReadings, type Vehicle } from './map-condition.js';
import { baseOf, type Checked } from './records.js';
import type { Axle, Bay, Body, Seat, Tank, Ticket, Tyres } from './shell.js';
import { tyreSize } from './tyre-size.js';

/** Front to rear. */
export function mapAxles(records: readonly Checked<'axle'>[]): readonly Axle[] {
  const sorted = [...records].sort((a, b) => a.form.x - b.form.x);
  return sorted.map((record, i) => mapAxle(record, i === 0));
}

function mapAxle({ id, form, source }: Checked<'axle'>, front: boolean): Axle {
  const tyres = form.tyres && mapTyres(form.tyres);
  return {
    id,
    source,
    xMm: form.x,
    gawrKg: form.gawr,
    suspensionKg: form.suspension,
    wheelsKg: form.wheels,
    trackMm: form.track,
    // Four tyres on an axle are two a side.
    dual: form.dual ?? (tyres?.count ?? 2) >= 4,
    lift: form.lift ?? false,
    steered: form.steered ?? front,
    steerDeg: form.steer_angle,
    travel: form.travel && { bumpMm: form.travel.bump, reboundMm: form.travel.rebound },
    share: form.share,
    springRateNM: form.spring_rate,
    tyres,
    ownMassKg: form.mass,
  };
}

function mapTyres(form: NonNullable<Form<'axle'>['tyres']>): Tyres {
  const sized = tyreSize(form.size);
  return {
    count: form.count,
    loadIndex: typeof form.load_index === 'number' ? [form.load_index] : form.load_index,
    inflationPa: form.inflation,
    inflationForIndexPa: form.inflation_for_index,
    size: form.size,
    diameterMm: form.diameter ?? sized?.diameterMm,
    widthMm: form.width ?? sized?.widthMm,
    spacingMm: form.spacing,
  };
}

/** Undefined where nobody says how heavy the contents are; told. */
export function mapTank(record: Checked<'tank'>, vehicle: Pick<Vehicle, 'say'>): Tank | undefined {
  const { id, form, source } = record;
  const density = form.density ?? densityOf(form.contents);
  if (density === undefined) {
    vehicle.say({
      rule: 'format.missing-key',
      severity: 'error',
      message: `Missing key \`density\` of tank ${id}: the density of \`${form.contents}\` is not known here, expected it typed, as \`density: 1000 kg/m3\``,
      ids: [id],
      place: source.place('contents'),
    });
    return undefined;
  }
  return {
    id,
    source,
    contents: form.contents,
    capacityM3: form.capacity,
    at: form.at,
    densityKgM3: density,
    use: form.use,
    of: form.of,
    place: form.place,
    body: mapBody(form),
  };
}

function mapBody({ size, middle, outside, rides_on }: Form<'bay'>): Body | undefined {
  const typed = [size, middle, outside, rides_on].some((one) => one !== undefined);
  return typed ? { sizeMm: size, middle, outside, ridesOn: rides_on } : undefined;
}

export const mapSeat = ({ id, form, source }: Checked<'seat'>): Seat => ({
  id,
  source,
  at: form.at,
  belted: form.belted ?? true,
});

export const mapBay = ({ id, form, source }: Checked<'bay'>): Bay => ({
  id,
  source,
  name: form.name,
  at: form.at,
  limitKg: form.limit,
  place: form.place,
  body: mapBody(form),
});

export function mapTicket(record: Checked<'ticket'>, vehicle: Vehicle): Ticket {
  const { date, scale, ticket, condition, readings, gross, together, raised } = record.form;
  return {
    ...baseOf(record),
    date,
    scale,
    ticket,
    condition: condition && mapCondition(condition, { ...record, path: ['condition'] }, vehicle),
    readings: mapReadings(readings),
    grossKg: gross,
    together,
    ...(raised && {
      raised: { axle: raised.axle, byMm: raised.by, level: raised.level, wheelRadiusMm: raised.wheel_radius },
    }),
  };
}
