import type { Form } from '../schema/kinds.js';
import { baseOf, type Checked } from './records.js';
import type { Circuit, Conductor, Medium, Protection, Run, ServiceNode, Zone } from './services.js';

/** The service that a circuit, node or run is of. */
export interface OfService {
  readonly service: string;
  readonly medium: Medium;
}

export function mapZone(record: Checked<'zone'>): Zone {
  const { name, box, along, clear, concealed, closed_by, carries, spare, pull_cord, cord_ends, conduit, drains } = record.form;
  const [a, b] = box ?? [];
  return {
    ...baseOf(record),
    name: name ?? record.id,
    box: a && b && [a, b],
    along,
    // A conduit is about as wide as its trade size; its fill is taken from the tables.
    clearMm: clear ?? (conduit && [conduit.nominalMm, conduit.nominalMm]),
    // The safe side: what is not said to be open is taken to be closed in.
    concealed: concealed ?? true,
    closedBy: closed_by ?? [],
    carries: carries ?? [],
    spare,
    pullCord: pull_cord,
    cordEnds: cord_ends,
    conduit,
    drains,
  };
}

export function mapCircuit(record: Checked<'circuit'>, of: OfService): Circuit {
  const { name, voltage, load, conductor, protection, marking, colour, bonding, ambient, size, working_pressure } = record.form;
  return {
    ...baseOf(record),
    ...of,
    name: name ?? record.id,
    voltageV: voltage,
    loadA: load?.a,
    loadW: load?.w,
    conductor: conductor && mapWire(conductor, of.medium),
    protection: protection && mapProtection(protection),
    marking,
    colour,
    bonding,
    ambientC: celsius(ambient),
    size,
    workingPressurePa: working_pressure,
  };
}

/** Rounded, so that 105 C typed is 105 °C read. */
export const celsius = (kelvin: number | undefined): number | undefined =>
  kelvin === undefined ? undefined : Math.round((kelvin - 273.15) * 1e6) / 1e6;

function mapWire(wire: NonNullable<Form<'run'>['conductor']>, medium: Medium): Conductor {
  return {
    awg: wire.awg,
    areaMm2: wire.area,
    type: wire.type,
    // A plus and a return, a live and a neutral; a data cable is one.
    conductors: wire.conductors ?? (medium === 'dc' || medium === 'ac' ? 2 : 1),
    ratingC: celsius(wire.rating),
    material: wire.material ?? 'copper',
  };
}

function mapProtection({ kind, rating, at }: NonNullable<Form<'circuit'>['protection']>): Protection {
  return { kind, ratingA: rating?.dimension === 'current' ? rating.value : undefined, at };
}

export function mapNode(record: Checked<'node'>, of: OfService): ServiceNode {
  const { kind, name, at, panel, circuit, tolerance, position, torque, rating, load, marking, isolator } = record.form;
  const { role, of: belongsTo, slot, spaces, terminals, start_load } = record.form;
  return {
    ...baseOf(record),
    ...of,
    nodeKind: kind,
    name,
    at,
    panel,
    circuit,
    toleranceMm: tolerance,
    position,
    torqueNm: torque,
    rating,
    loadA: load?.a,
    loadW: load?.w,
    marking,
    isolator,
    role,
    of: belongsTo,
    slot,
    spaces: spaces?.map(({ spare, ...space }) => ({ ...space, spare: spare ?? false })),
    terminalsC: celsius(terminals),
    startLoadA: start_load?.a,
    startLoadW: start_load?.w,
  };
}

/** Its path is set once the nodes of every service are known. */
export function mapRun(record: Checked<'run'>, of: OfService): Run {
  const { form } = record;
  return {
    ...baseOf(record),
    ...of,
    circuit: form.circuit,
    from: form.from,
    to: form.to,
    fromSide: form.from_side,
    toSide: form.to_side,
    via: form.via ?? [],
    path: [],
    zones: form.zones ?? [],
    installedLengthMm: form.installed_length,
    toleranceMm: form.tolerance,
    supportsMm: form.supports,
    endSupportsMm: form.end_supports,
    tags: form.tags,
    sheathed: form.sheathed,
    colour: form.colour,
    grommets: form.grommets ?? [],
    sealed: form.sealed,
    marking: form.marking,
    conductor: form.conductor && mapWire(form.conductor, of.medium),
    size: form.size,
    workingPressurePa: form.working_pressure,
    spare: form.spare,
    abandoned: form.abandoned,
  };
}

/** The whole way of each run, ends included; empty where an end is unknown. */
export function withPaths(runs: readonly Run[], nodes: readonly ServiceNode[]): readonly Run[] {
  const places = new Map(nodes.map((node) => [node.id, node.at]));
  return runs.map((run) => {
    const from = places.get(run.from);
    const to = places.get(run.to);
    return from && to ? { ...run, path: [from, ...run.via, to] } : run;
  });
}
