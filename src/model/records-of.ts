import type { RecordKind, Shell } from './shell.js';
import type { RecordBase } from './source.js';

/** Kinds whose records stand in a list of their own; axles, tanks, seats and bays are part of the shell's record. */
export type ListedKind = Exclude<RecordKind, 'shell' | 'axle' | 'tank' | 'seat' | 'bay'>;

/** Every record of a shell by its kind: the one place where a new kind joins the fingerprint and the index of ids. */
export const recordsOf = (shell: Shell): Readonly<Record<ListedKind, readonly RecordBase[]>> => ({
  zone: shell.zones,
  member: shell.members,
  weld: shell.welds,
  panel: shell.panels,
  opening: shell.openings,
  circuit: shell.circuits,
  node: shell.nodes,
  run: shell.runs,
  component: shell.components,
  ticket: shell.tickets,
  test: shell.tests,
  finding: shell.findings,
  signoff: shell.signoffs,
  amendment: shell.amendments,
  photo: shell.photos,
  declared: shell.declared,
  clamp: shell.clamps,
});
