import { LISTED } from './kinds.js';
import type { ListedKind } from './names.js';
import type { RecordBase } from './record-base.js';
import { listName, type Shell, type ShellLists } from './shell.js';

/** Kinds whose records stand in a list of their own; axles, tanks, seats and bays are part of the shell's record. */
export const LISTED_KINDS = Object.keys(LISTED) as readonly ListedKind[];

/** Every record of a shell by its kind. */
export const recordsOf = (shell: Shell): Readonly<Record<ListedKind, readonly RecordBase[]>> =>
  Object.fromEntries(LISTED_KINDS.map((kind) => [kind, shell[listName(kind)]])) as unknown as Record<
    ListedKind,
    readonly RecordBase[]
  >;

/** A shell's lists with nothing in them. */
export const emptyLists = (): ShellLists =>
  Object.fromEntries(LISTED_KINDS.map((kind) => [listName(kind), []])) as unknown as ShellLists;
