import type { z } from 'zod';
import type { Vec3 } from '../geometry/vector.js';
import type { FileUnits } from '../quantity/parse.js';
import { Fields } from './fields.js';
import * as library from './library.js';
import * as records from './records.js';
import { section } from './section.js';
import * as services from './services.js';
import * as shell from './shell.js';
import { shop } from './shop.js';
import * as structure from './structure.js';

/** Every kind of record and part of one that has a form of its own → how its schema is made. Built when first needed. */
export const KINDS = {
  shop,
  section,
  material: library.material,
  certificate: library.certificate,
  conductor: library.conductor,
  procedure: library.procedure,
  person: library.person,
  instrument: library.instrument,
  stage: library.stage,
  rule: library.packedRule,
  shell: shell.shell,
  chassis: shell.chassis,
  datum: shell.datum,
  bare: shell.bare,
  axle: shell.axle,
  tank: shell.tank,
  seat: shell.seat,
  bay: shell.bay,
  'loading condition': shell.ownCondition,
  zone: services.zone,
  member: structure.member,
  weld: structure.weld,
  panel: structure.panel,
  opening: structure.opening,
  service: services.service,
  circuit: services.circuit,
  node: services.node,
  run: services.run,
  component: records.component,
  ticket: records.ticket,
  test: records.test,
  finding: records.nonconformance,
  signoff: records.signoff,
  amendment: records.amendment,
  photo: records.photo,
  declared: records.declared,
  clamp: structure.clamp,
} as const satisfies Record<string, (f: Fields) => z.ZodType>;

export type Kind = keyof typeof KINDS;
/** A record's fields under their typed names, in SI. */
export type Form<K extends Kind> = z.infer<ReturnType<(typeof KINDS)[K]>>;

/** Every shell may set its datum elsewhere. */
const MOST_SHARED = 64;
const SHARED = new Map<string, Schemas>();

/** The schemas of files that share units and datum: each is built once, at the first record of its kind. */
export class Schemas {
  readonly fields: Fields;
  private readonly built = new Map<Kind, z.ZodType>();

  constructor(units: FileUnits = {}, origin: Vec3 = [0, 0, 0]) {
    this.fields = new Fields(units, origin);
  }

  /** The same for the same units and datum: a schema costs more to build than a small shell to check. */
  static for(units: FileUnits, origin: Vec3): Schemas {
    const key = JSON.stringify([units, origin]);
    const found = SHARED.get(key) ?? new Schemas(units, origin);
    if (SHARED.size >= MOST_SHARED) SHARED.clear();
    SHARED.set(key, found);
    return found;
  }

  of<K extends Kind>(kind: K): z.ZodType<Form<K>> {
    const schema = this.built.get(kind) ?? KINDS[kind](this.fields);
    this.built.set(kind, schema);
    return schema as z.ZodType<Form<K>>;
  }
}
