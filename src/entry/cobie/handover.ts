import { zoneMap } from '../../compute/access/zones.js';
import type { Vec3 } from '../../geometry/vector.js';
import type { Model } from '../../model/shell.js';
import type { Component, ServiceNode } from '../../records/index.js';

/** One sheet of the hand-over set. */
export interface CobieSheet {
  readonly name: string;
  readonly heads: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

export interface CobieOptions {
  /** ISO 8601, of the record’s last commit; null where it has none. */
  readonly createdOn: string | null;
  readonly revision: string | null;
  /** The customer is named only where asked. */
  readonly customer: boolean;
}

/** What the sheets say where nothing is known. */
export const NONE = 'n/a';
export const SYSTEM = 'shellbook';

/** What stands in the coach: a component, or a node of a service. */
export interface CobieEntry {
  readonly name: string;
  readonly type: string;
  readonly description: string;
  /** Absent where no place is recorded. */
  readonly at?: Vec3 | undefined;
  readonly serial?: string | undefined;
  readonly date?: string | undefined;
  readonly tag?: string | undefined;
}

/** The record, and what every sheet says of where a row comes from. */
export class Handover {
  readonly by: string;
  readonly on: string;
  readonly things: readonly CobieEntry[];
  private readonly zones: ReturnType<typeof zoneMap>;

  constructor(
    readonly model: Model,
    readonly options: CobieOptions,
  ) {
    this.by = emailIn(model.shop.contact) ?? model.shop.name;
    this.on = options.createdOn ?? NONE;
    this.things = [...model.shell.components.map(ofComponent), ...model.shell.nodes.map(ofNode)];
    this.zones = zoneMap(model.shell.zones);
  }

  spaceAt(at: Vec3 | undefined): string {
    return (at && this.zones.holding(at)[0]?.id) ?? this.model.shell.id;
  }

  /** The three columns that say where a row comes from. */
  origin(object: string, id: string): readonly string[] {
    return [SYSTEM, object, id];
  }
}

const ofComponent = (one: Component): CobieEntry => ({
  name: one.id,
  type: one.part ?? one.name,
  description: one.name,
  at: one.at,
  serial: one.serial,
  date: one.date,
});

const ofNode = (one: ServiceNode): CobieEntry => ({
  name: one.id,
  type: `${one.medium} ${one.nodeKind}`,
  description: one.name ?? `${one.medium} ${one.nodeKind}`,
  at: one.at,
  date: one.date,
  tag: one.marking,
});

export const STAMP = ['CreatedBy', 'CreatedOn'];
export const ORIGIN = ['ExternalSystem', 'ExternalObject', 'ExternalIdentifier'];

export const sheet = (
  name: string,
  heads: readonly string[],
  rows: readonly (readonly (string | undefined)[])[],
): CobieSheet => ({
  name,
  heads,
  rows: rows.map((row) => row.map((cell) => (cell === undefined || cell === '' ? NONE : cell))),
});

/** The sheets know people by their address. */
export const emailIn = (contact: string | undefined): string | undefined => /[^\s,;<>]+@[^\s,;<>]+/u.exec(contact ?? '')?.[0];

export const cobieMm = (value: number): string => String(Number(value.toFixed(1)));
