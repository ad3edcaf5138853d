import { baseOf, type Checked } from './records.js';
import type { Clamp, LineMember, Member, Opening, Panel, PlateMember, Weld } from './structure.js';

/** Undefined where neither a line nor a plate was typed whole; the reader has told that. */
export function mapMember(record: Checked<'member'>): Member | undefined {
  const { part, alloy, heat, offcut_of } = record.form;
  const shape = mapMemberShape(record.form);
  return (
    shape && {
      ...baseOf(record),
      part: part ?? record.id,
      alloy,
      heat,
      offcutOf: offcut_of,
      memberClass: record.form.class,
      shape,
    }
  );
}

function mapMemberShape(form: Checked<'member'>['form']): LineMember | PlateMember | undefined {
  const { section, from, to, roll, cut_length, plate } = form;
  if (plate) return { kind: 'plate', thicknessMm: plate.thickness, outline: plate.outline };
  if (section === undefined || !from || !to) return undefined;
  return { kind: 'line', section, from, to, rollDeg: roll ?? 0, cutLengthMm: cut_length };
}

export function mapWeld(record: Checked<'weld'>): Weld {
  const { joins, type, size, length, sides, process, procedure, filler, position, welder, at, all_round, site, inspections } =
    record.form;
  return {
    ...baseOf(record),
    joins,
    type,
    sizeMm: size,
    lengthMm: length,
    sides: sides ?? 'arrow',
    process,
    procedure,
    filler,
    position,
    welder,
    at,
    allRound: all_round ?? false,
    ...(site ? { site } : {}),
    inspections: inspections ?? [],
  };
}

export function mapPanel(record: Checked<'panel'>): Panel {
  const { kind, name, alloy, thickness, outline, holes, of, opening, facing, fixing, bond, mass } = record.form;
  const { torque, ...fixed } = fixing ?? {};
  return {
    ...baseOf(record),
    panelKind: kind,
    name,
    alloy,
    thicknessMm: thickness,
    outline,
    holes: holes ?? [],
    of,
    openingMm: opening,
    facing,
    fixing: fixing && { ...fixed, method: fixing.method, torqueNm: torque },
    bond: bond && {
      surfaceK: bond.surface,
      airK: bond.air,
      humidity: bond.humidity,
      openTimeS: bond.open_time,
      openTimeLimitS: bond.open_time_limit,
      cureS: bond.cure,
      cureLeastS: bond.cure_least,
      coupon: bond.coupon,
    },
    massKg: mass,
  };
}

export function mapOpening(record: Checked<'opening'>): Opening {
  const { kind, wall, sill, width, height, measured, header, gussets, travel, depth, driven_by } = record.form;
  return {
    ...baseOf(record),
    openingKind: kind,
    wall,
    sill: sill ?? [],
    widthMm: width,
    heightMm: height,
    measured: measured && {
      topMm: measured.top,
      bottomMm: measured.bottom,
      frontMm: measured.front,
      rearMm: measured.rear,
      diagonalsMm: measured.diagonals,
      headerSag: (measured.header_sag ?? []).map(({ at, drop }) => ({ atMm: at, dropMm: drop })),
    },
    header,
    gussets: gussets ?? [],
    travelMm: travel,
    depthMm: depth,
    drivenBy: driven_by ?? [],
  };
}

export function mapClamp(record: Checked<'clamp'>): Clamp {
  const { kind, at, bolt, torque, damper, isolator, joins, check_again, checks } = record.form;
  return {
    ...baseOf(record),
    clampKind: kind,
    at,
    bolt,
    torqueNm: torque,
    damper,
    isolator,
    joins: joins ?? [],
    checkAgain: check_again && `after ${check_again.after}`,
    checks: (checks ?? []).map(({ date, torque: torqueNm, by, after }) => ({ date, torqueNm, by, after })),
  };
}
