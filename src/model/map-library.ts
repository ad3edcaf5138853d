import type { Form } from '../schema/kinds.js';
import { HOT_MM, LIMITS } from './defaults.js';
import type {
  Certificate,
  ConductorType,
  Instrument,
  Limits,
  Material,
  PackedRule,
  Person,
  Procedure,
  Section,
  SectionShape,
  Shop,
  Stage,
} from './library.js';
import { celsius } from './map-services.js';
import { baseOf, type Checked } from './records.js';
import type { RecordBase } from './source.js';

export function mapShop(base: Omit<RecordBase, 'photos'>, form: Form<'shop'> | undefined): Shop {
  return {
    ...base,
    photos: form?.photos ?? [],
    name: form?.shop.name ?? '',
    place: form?.shop.place,
    contact: form?.shop.contact,
    units: form?.units ?? 'both',
    paper: form?.paper ?? 'letter',
    // A shop that works in inches alone reads AWS A2.4; every other the international symbols, unless it says so.
    weldSymbols: form?.weld_symbols ?? (form?.units === 'us' ? 'aws' : 'iso'),
    limits: mapLimits(form?.limits),
    inspection: { primary: form?.inspection?.primary ?? {}, secondary: form?.inspection?.secondary ?? {} },
    english: form?.english,
    language: form?.language,
    labels: form?.labels,
  };
}

function mapLimits(typed: Form<'shop'>['limits']): Limits {
  if (!typed) return LIMITS;
  const keepApart = typed.keep_apart?.map(({ media, distance, share_zone }) => ({
    media,
    distanceMm: distance,
    shareZone: share_zone,
  }));
  return {
    axleMargin: typed.axle_margin ?? LIMITS.axleMargin,
    diagonalDifferenceMm: typed.diagonal_difference ?? LIMITS.diagonalDifferenceMm,
    headerSagMm: typed.header_sag ?? LIMITS.headerSagMm,
    trussSpacingMm: typed.truss_spacing ?? LIMITS.trussSpacingMm,
    cavityFill: typed.cavity_fill ?? LIMITS.cavityFill,
    keepApart: keepApart ?? LIMITS.keepApart,
    movingClearanceMm: typed.moving_clearance ?? LIMITS.movingClearanceMm,
    hotClearanceMm: {
      dry: typed.hot_clearance?.dry ?? HOT_MM.dry,
      wet: typed.hot_clearance?.wet ?? HOT_MM.wet,
    },
    voltageDrop: typed.voltage_drop ?? LIMITS.voltageDrop,
    ambientC: celsius(typed.ambient),
    flatnessMm: typed.flatness ?? LIMITS.flatnessMm,
    lateEntryDays: typed.late_entry === undefined ? LIMITS.lateEntryDays : typed.late_entry / 86_400,
    unexplainedMass: typed.unexplained_mass ?? LIMITS.unexplainedMass,
    tapeMm: typed.tape,
    overlayMm: typed.overlay,
  };
}

export function mapMaterial(record: Checked<'material'>): Material {
  const { kind, density, modulus, yield: yieldPa, tensile, group } = record.form;
  return { ...baseOf(record), materialKind: kind, densityKgM3: density, modulusPa: modulus, yieldPa, tensilePa: tensile, group };
}

export function mapCertificate(record: Checked<'certificate'>): Certificate {
  const { heats, alloy, type, document } = record.form;
  return { ...baseOf(record), heats, alloy, type, document };
}

export const mapSection = (record: Checked<'section'>): Section => ({ ...baseOf(record), dimensions: mapShape(record.form) });

function mapShape(form: Form<'section'>): SectionShape {
  switch (form.shape) {
    case 'rectangular tube':
      return { shape: form.shape, ...bounds(form), wallMm: form.wall, cornerRadiusMm: form.corner_radius ?? 0 };
    case 'double hollow':
      return { shape: form.shape, ...bounds(form), wallMm: form.wall, webMm: form.web, cornerRadiusMm: form.corner_radius ?? 0 };
    case 'I-beam':
    case 'channel':
    case 'tee':
      return { shape: form.shape, ...bounds(form), webMm: form.web, flangeMm: form.flange, filletMm: form.fillet ?? 0 };
    case 'angle':
      return {
        shape: form.shape,
        ...bounds(form),
        wallMm: form.wall,
        filletMm: form.fillet ?? 0,
        toeRadiusMm: form.toe_radius ?? 0,
      };
    case 'flat bar':
      return { shape: form.shape, ...bounds(form) };
    case 'round bar':
      return { shape: form.shape, diameterMm: form.diameter };
    case 'round tube':
      return { shape: form.shape, diameterMm: form.diameter, wallMm: form.wall };
    case 'corner radius':
      return { shape: form.shape, outerRadiusMm: form.outer_radius, wallMm: form.wall, sweepDeg: form.sweep ?? 90 };
    case 'custom':
      return { shape: form.shape, ...bounds(form), areaMm2: form.area, ixMm4: form.ix, iyMm4: form.iy, jMm4: form.j };
  }
}

const bounds = (form: { depth: number; width: number }): { depthMm: number; widthMm: number } => ({
  depthMm: form.depth,
  widthMm: form.width,
});

export function mapConductor(record: Checked<'conductor'>): ConductorType {
  const { area, outside_diameter, inside_diameter, mass, ampacity, material } = record.form;
  return {
    ...baseOf(record),
    areaMm2: area,
    outsideDiameterMm: outside_diameter,
    insideDiameterMm: inside_diameter,
    massKgM: mass,
    ampacityA: ampacity,
    materialKind: material,
  };
}

export function mapProcedure(record: Checked<'procedure'>): Procedure {
  const { process, types, base, thickness, filler, positions, edition } = record.form;
  return { ...baseOf(record), process, types, base, thicknessMm: thickness, filler, positions, edition };
}

export function mapPerson(record: Checked<'person'>): Person {
  const { name, role, qualified, signs, git, key } = record.form;
  return {
    ...baseOf(record),
    name,
    role,
    qualified: (qualified ?? []).map(({ process, method, positions, thickness, groups, from, until }) => ({
      process,
      method,
      positions: positions ?? [],
      thicknessMm: thickness,
      groups: groups ?? [],
      from,
      until,
    })),
    signs,
    git,
    key,
  };
}

export function mapInstrument(record: Checked<'instrument'>): Instrument {
  const { kind, name, resolution, tolerance, calibrated, due } = record.form;
  return { ...baseOf(record), instrumentKind: kind, name, resolution, tolerance, calibrated, due };
}

export const mapStage = (record: Checked<'stage'>): Stage => ({
  ...baseOf(record),
  name: record.form.name,
  holdPoints: record.form.hold_points ?? [],
});

export function mapPackedRule(record: Checked<'rule'>, pack: string): PackedRule {
  const { rule, limit, citation, edition, verified } = record.form;
  return { ...baseOf(record), id: record.id || rule, rule, limit, citation, edition, verified, pack };
}
