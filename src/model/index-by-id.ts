import type { Entry, RecordKind, Shell } from '../records/index.js';
import { recordsOf } from '../records/shell-lists.js';

/** Fills the index of every id of a shell, the shell's own and those of axles, tanks, seats and bays included. */
export function indexById(shell: Shell, index: Map<string, Entry>): void {
  const put = (kind: RecordKind, records: readonly { readonly id: string }[]): void => {
    for (const record of records) if (!index.has(record.id)) index.set(record.id, { kind, id: record.id, record });
  };
  put('axle', shell.chassis.axles);
  put('tank', shell.tanks);
  put('seat', shell.seats);
  put('bay', shell.bays);
  for (const [kind, records] of Object.entries(recordsOf(shell))) put(kind as RecordKind, records);
  put('shell', [shell]);
}
