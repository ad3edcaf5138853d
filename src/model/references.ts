import type { LibraryKind } from './links.js';
import type { RecordKind } from './shell.js';

/** What a key must name: a record of this shell of one of some kinds, any record of it, or one of the library. */
export type Target = { readonly kinds: readonly RecordKind[] } | { readonly any: true } | { readonly library: LibraryKind };

/** Keys from the record down: `*` each item of a list, `{}` each key of a block, which is then itself the id. */
export interface Reference {
  readonly path: readonly string[];
  readonly target: Target;
}

const to = (path: string, ...kinds: RecordKind[]): Reference => ({ path: path.split('.'), target: { kinds } });
const toAny = (path: string): Reference => ({ path: path.split('.'), target: { any: true } });
const toLibrary = (path: string, library: LibraryKind): Reference => ({ path: path.split('.'), target: { library } });

/** Of every record. */
const SHARED = [toLibrary('stage', 'stage'), to('photos.*', 'photo')];

const condition = (path: string): readonly Reference[] => [
  to(`${path}.occupants.*`, 'seat'),
  to(`${path}.occupants.*.seat`, 'seat'),
  to(`${path}.missing.*`, 'component'),
  to(`${path}.bays.{}`, 'bay'),
];

const OWN: Readonly<Partial<Record<RecordKind, readonly Reference[]>>> = {
  shell: [
    to('chassis.bare.readings.{}', 'axle'),
    ...condition('chassis.bare.condition'),
    ...condition('conditions.*.condition'),
    toAny('parts.*.of'),
  ],
  axle: [to('share.with', 'axle')],
  tank: [to('of', 'component'), to('rides_on', 'opening')],
  bay: [to('rides_on', 'opening')],
  component: [to('rides_on', 'opening')],
  zone: [to('closed_by.*', 'panel'), to('cord_ends.*', 'panel', 'node')],
  member: [toLibrary('section', 'section'), toLibrary('alloy', 'material'), to('offcut_of', 'member')],
  weld: [
    to('joins.*', 'member', 'panel'),
    to('joins.*.*', 'member', 'panel'),
    toLibrary('procedure', 'procedure'),
    toLibrary('welder', 'person'),
    toLibrary('inspections.*.by', 'person'),
  ],
  panel: [toLibrary('alloy', 'material'), to('of', 'panel'), to('bond.coupon', 'test')],
  opening: [to('header', 'member'), to('gussets.*', 'member')],
  circuit: [to('protection.at', 'node'), toLibrary('conductor.type', 'conductor')],
  node: [to('panel', 'panel'), to('circuit', 'circuit'), to('of.*', 'component', 'tank')],
  run: [
    to('from', 'node'),
    to('to', 'node'),
    to('circuit', 'circuit'),
    to('zones.*', 'zone'),
    to('grommets.*', 'member', 'panel', 'zone'),
    to('sealed.*', 'panel'),
    toLibrary('conductor.type', 'conductor'),
  ],
  ticket: [
    toLibrary('scale', 'instrument'),
    to('readings.{}', 'axle'),
    to('raised.axle', 'axle'),
    to('raised.level', 'ticket'),
    ...condition('condition'),
  ],
  test: [toAny('of.*'), toLibrary('instrument', 'instrument')],
  finding: [toAny('of.*')],
  signoff: [toLibrary('by', 'person')],
  amendment: [toAny('changes.*')],
  photo: [toAny('of.*'), toAny('seen.*.is')],
  clamp: [toAny('joins.*')],
  declared: [toAny('of.*')],
};

/** Every reference that a record of this kind may hold. */
export const referencesOf = (kind: RecordKind): readonly Reference[] => ALL.get(kind) ?? SHARED;

const ALL = new Map(Object.entries(OWN).map(([kind, own]) => [kind as RecordKind, [...own, ...SHARED]]));
