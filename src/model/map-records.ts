import { baseOf, type Checked } from './records.js';
import type { Amendment, Component, Declared, Nonconformance, Photo, Signoff, Test } from './shell.js';

export function mapComponent(record: Checked<'component'>): Component {
  const { name, mass, at, basis, size, part, serial, tolerance, hot, keep_clear } = record.form;
  const { middle, outside, rides_on } = record.form;
  // The safe side: a mass that nobody says to have weighed is an estimate, with an estimate's uncertainty.
  return {
    ...baseOf(record),
    name,
    massKg: mass,
    at,
    basis: basis ?? 'estimated',
    sizeMm: size,
    part,
    serial,
    toleranceMm: tolerance,
    hot,
    keepClearMm: keep_clear,
    middle,
    outside,
    ridesOn: rides_on,
  };
}

export function mapTest(record: Checked<'test'>): Test {
  const { kind, of, limit, measured, start, end, duration, instrument, start_temperature, end_temperature, witness } =
    record.form;
  return {
    ...baseOf(record),
    testKind: kind,
    of,
    limit,
    measured,
    start,
    end,
    durationS: duration,
    instrument,
    startTemperatureK: start_temperature,
    endTemperatureK: end_temperature,
    witness,
  };
}

export function mapNonconformance(record: Checked<'finding'>): Nonconformance {
  const { raised, of, rules, description, decision, reason, approved_by, closed, tell_owner } = record.form;
  return {
    ...baseOf(record),
    raised,
    of,
    rules: rules ?? [],
    description,
    decision,
    reason,
    approvedBy: approved_by,
    closed,
    tellOwner: tell_owner ?? false,
  };
}

export function mapSignoff(record: Checked<'signoff'>): Signoff {
  const { stage, role, by, date, digest, entered_by } = record.form;
  const id = record.id || `${stage}/${role}/${date}`.replace(/[^\p{L}\p{N}./_-]+/gu, '-');
  return { ...baseOf(record), id, stage, role, by, date, digest, enteredBy: entered_by };
}

export function mapAmendment(record: Checked<'amendment'>): Amendment {
  const { date, by, reason, changes } = record.form;
  return { ...baseOf(record), date, by, reason, changes: changes ?? [] };
}

export function mapPhoto(record: Checked<'photo'>): Photo {
  const { file, of, view, taken, caption, sha256, shows, camera, seen, vouched } = record.form;
  const [from, to] = shows ?? [];
  return {
    ...baseOf(record),
    file,
    of: of ?? [],
    view,
    taken,
    caption,
    sha256: sha256?.toLowerCase(),
    ...(from && to ? { shows: [from, to] as const } : {}),
    ...(camera ? { camera: { at: camera.at, towards: camera.towards, angleDeg: camera.angle } } : {}),
    seen,
    vouched,
  };
}

export function mapDeclared(record: Checked<'declared'>): Declared {
  const { kind, at, rating, document, of } = record.form;
  return { ...baseOf(record), declaredKind: kind, at, rating, document, of: of ?? [] };
}
