import type { Entry, RecordKind, Shell } from './shell.js';

/** Fills the index of every id of a shell, the shell's own and those of axles, tanks, seats and bays included. */
export function indexById(shell: Shell, index: Map<string, Entry>): void {
  const put = (kind: RecordKind, records: readonly { readonly id: string }[]): void => {
    for (const record of records) if (!index.has(record.id)) index.set(record.id, { kind, id: record.id, record });
  };
  put('axle', shell.chassis.axles);
  put('tank', shell.tanks);
  put('seat', shell.seats);
  put('bay', shell.bays);
  put('zone', shell.zones);
  put('member', shell.members);
  put('weld', shell.welds);
  put('panel', shell.panels);
  put('opening', shell.openings);
  put('circuit', shell.circuits);
  put('node', shell.nodes);
  put('run', shell.runs);
  put('component', shell.components);
  put('ticket', shell.tickets);
  put('test', shell.tests);
  put('finding', shell.findings);
  put('signoff', shell.signoffs);
  put('amendment', shell.amendments);
  put('photo', shell.photos);
  put('declared', shell.declared);
  put('clamp', shell.clamps);
  put('shell', [shell]);
}
