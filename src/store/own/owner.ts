import { createHash } from 'node:crypto';
import { readFileSync, readlinkSync } from 'node:fs';
import { hostname } from 'node:os';

/**
 * A running process, named so that no other ever bears the name: the start of its machine and the room its number counts in
 * (containers have their own), its number, and the tick it began at, since numbers are given again. Where the system does not tell the
 * last (only Linux does), it is 0.
 */
interface Owner {
  readonly machine: string;
  readonly pid: number;
  readonly began: string;
}

const NAME = /^([0-9a-f]{16})\.(\d{1,10})\.(\d{1,20})$/u;

/** This process, as a part of a file name. */
export function ownName(): string {
  own ??= `${thisMachine()}.${process.pid}.${processOf(process.pid)?.began ?? '0'}`;
  return own;
}

let own: string | undefined;

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
  return found !== undefined && owner.began !== '0' && (found.began !== owner.began || found.dead);
}

/** Whether it is a process of this machine, which can be asked whether it runs. */
export const isHere = (name: string): boolean => read(name)?.machine === thisMachine();

/** Its number, for a message; undefined where the name says nothing. */
export const numberOf = (name: string): number | undefined => read(name)?.pid;

function read(name: string): Owner | undefined {
  const [, machine, pid, began] = NAME.exec(name) ?? [];
  return machine === undefined || began === undefined ? undefined : { machine, pid: Number(pid), began };
}

let machine: string | undefined;

function thisMachine(): string {
  machine ??= createHash('sha256').update(bootOf()).digest('hex').slice(0, 16);
  return machine;
}

function bootOf(): string {
  try {
    const boot = readFileSync('/proc/sys/kernel/random/boot_id', 'utf8').trim();
    return `${boot} ${readlinkSync('/proc/self/ns/pid')}`;
  } catch {
    return hostname();
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
