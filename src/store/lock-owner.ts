import { readFileSync, readlinkSync } from 'node:fs';

/**
 * A running process, named so that no other ever bears the name: the start of its machine, the room its number counts in (containers
 * have their own), its number, and the tick it began at, since numbers are given again.
 */
interface Owner {
  readonly machine: string;
  readonly pid: number;
  readonly began: string;
}

const NAME = /^([0-9a-f-]{36}-\d+)\.(\d+)\.(\d+)$/u;

/** This process, as a file name. Undefined where the system does not tell (only Linux does). */
export function ownName(): string | undefined {
  const machine = thisMachine();
  const began = machine === undefined ? undefined : processOf(process.pid)?.began;
  return began === undefined ? undefined : `${machine}.${process.pid}.${began}`;
}

/** Whether the process of that name has surely ended. False for one of another machine: nothing is known of it here. */
export function hasEnded(name: string): boolean {
  const owner = read(name);
  if (!owner || owner.machine !== thisMachine()) return false;
  try {
    process.kill(owner.pid, 0);
  } catch (error) {
    // Else it is there and someone else’s.
    if ((error as NodeJS.ErrnoException).code === 'ESRCH') return true;
  }
  const found = processOf(owner.pid);
  return found !== undefined && (found.began !== owner.began || found.dead);
}

function read(name: string): Owner | undefined {
  const [, machine, pid, began] = NAME.exec(name) ?? [];
  return machine === undefined || began === undefined ? undefined : { machine, pid: Number(pid), began };
}

function thisMachine(): string | undefined {
  try {
    const boot = readFileSync('/proc/sys/kernel/random/boot_id', 'utf8').trim();
    const room = /\d+/u.exec(readlinkSync('/proc/self/ns/pid'))?.[0];
    return room === undefined ? undefined : `${boot}-${room}`;
  } catch {
    return undefined;
  }
}

/** proc(5), /proc/PID/stat: the name in brackets may hold anything; after it, field 3 is the state and field 22 the start in ticks. */
function processOf(pid: number): { readonly began: string; readonly dead: boolean } | undefined {
  try {
    const text = readFileSync(`/proc/${pid}/stat`, 'utf8');
    const fields = text.slice(text.lastIndexOf(')') + 2).split(' ');
    const [state, began] = [fields[0], fields[19]];
    return state === undefined || began === undefined ? undefined : { began, dead: state === 'Z' || state === 'X' };
  } catch {
    return undefined;
  }
}
