import { amendment } from './amendment.js';
import { axle } from './axle.js';
import { bay } from './bay.js';
import { certificate } from './certificate.js';
import { bare, chassis, datum } from './chassis.js';
import { circuit } from './circuit.js';
import { clamp } from './clamp.js';
import { component } from './component.js';
import { conductor } from './conductor.js';
import { declared } from './declared.js';
import { instrument } from './instrument.js';
import type { FormOf, Kind, RecordOf } from './kind.js';
import { loadingCondition } from './loading-condition.js';
import { material } from './material.js';
import { member } from './member.js';
import type { HeadKind, KindName, LibraryKind, ListedKind, PartKind } from './names.js';
import { node } from './node.js';
import { nonconformance } from './nonconformance.js';
import { opening } from './opening.js';
import { packedRule } from './packed-rule.js';
import { panel } from './panel.js';
import { person } from './person.js';
import { photo } from './photo.js';
import { procedure } from './procedure.js';
import { run } from './run.js';
import { seat } from './seat.js';
import { section } from './section.js';
import { service } from './service.js';
import { shellHead } from './shell-head.js';
import { shop } from './shop.js';
import { signoff } from './signoff.js';
import { stage } from './stage.js';
import { tank } from './tank.js';
import { test } from './test.js';
import { ticket } from './ticket.js';
import { weld } from './weld.js';
import { zone } from './zone.js';

type Table<Names extends KindName> = { readonly [N in Names]: Kind<N, never, unknown> | Kind<N> };

/** The library's kinds, in the order of its files. */
export const LIBRARY = {
  material,
  certificate,
  section,
  conductor,
  procedure,
  person,
  instrument,
  stage,
  rule: packedRule,
} as const satisfies Table<LibraryKind>;

/** Kinds whose records stand in a list of a shell, in the order of its files, services after the structure. */
export const LISTED = {
  zone,
  member,
  weld,
  panel,
  opening,
  circuit,
  node,
  run,
  component,
  ticket,
  test,
  finding: nonconformance,
  signoff,
  amendment,
  photo,
  declared,
  clamp,
} as const satisfies Table<ListedKind>;

/** Parts of shell.yaml with an id. */
export const HEAD = { axle, tank, seat, bay } as const satisfies Table<HeadKind>;

/** Whole files and parts of their heads. */
export const PARTS = {
  shop,
  shell: shellHead,
  chassis,
  datum,
  bare,
  'loading condition': loadingCondition,
  service,
} as const satisfies Table<PartKind>;

/** Every kind of record and part of one that has a form of its own. */
export const KINDS = { ...LIBRARY, ...LISTED, ...HEAD, ...PARTS } as const;

type Kinds = typeof KINDS;
/** A record's fields under their typed names, in SI. */
export type Form<K extends KindName> = FormOf<Kinds[K]>;
/** A record in the model. */
export type RecordNamed<K extends KindName> = RecordOf<Kinds[K]>;

/** A kind whatever its fields are. */
export const kindOf = (name: KindName): Kind => KINDS[name] as unknown as Kind;
export const KIND_NAMES = Object.keys(KINDS) as readonly KindName[];
