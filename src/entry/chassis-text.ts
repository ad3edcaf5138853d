import { isMap, isScalar, type Node, type Pair } from 'yaml';
import { UserError } from '../user-error.js';
import { appendRecords } from './append.js';
import { setValue } from './change.js';
import { heldList, usualStyle } from './homes.js';
import { isBlank, Splices, startOf, wireRootOf } from './splices.js';
import { type Data, field } from './yaml-text.js';

/** What was said of the chassis as it came: keys of shell.yaml, its axles, its bare weights. */
export interface ChassisEntry {
  /** Of shell.yaml itself, as `vin`. */
  readonly head: Data;
  /** Of `chassis`. */
  readonly chassis: Data;
  readonly axles: readonly Data[];
  readonly tanks: readonly Data[];
}

/** Text of shell.yaml with what was said in its place; all else stays as it was typed. Throws {@link UserError} for a form that cannot take it. */
export function withChassis(file: string, old: string, { head, chassis, axles, tanks }: ChassisEntry): string {
  let text = old;
  for (const [key, value] of Object.entries(head)) text = set(file, text, [key], value);
  for (const [key, value] of Object.entries(chassis)) text = set(file, text, ['chassis', key], value);
  if (axles.length > 0 && !hasBlock(file, text, 'chassis')) text = `${ended(text)}chassis:\n  axles:\n`;
  text = appendRecords({ file, ...heldList('axle'), usual: usualStyle('axle') }, text, axles);
  return appendRecords({ file, ...heldList('tank'), usual: usualStyle('tank') }, text, tanks);
}

function set(file: string, text: string, path: readonly [string, ...string[]], value: unknown): string {
  const root = wireRootOf(file, text);
  const [key, inner] = path;
  if (root === null || !isMap(root) || root.flow)
    throw new UserError(`${file} has no block of keys: write \`shell:\` there first`);
  if (inner !== undefined && !hasBlock(file, text, key)) return `${ended(text)}${key}:\n  ${field(inner, value, '    ')}\n`;
  const splices = new Splices(text);
  setValue(splices, root, path, value);
  return splices.apply();
}

function hasBlock(file: string, text: string, key: string): boolean {
  const root = wireRootOf(file, text);
  const pair = isMap(root)
    ? (root.items as Pair<Node, Node | null>[]).find((one) => isScalar(one.key) && one.key.value === key)
    : undefined;
  if (pair === undefined) return false;
  if (pair.value !== null && !isBlank(pair.value)) return true;
  throw new UserError(
    `\`${key}:\` in ${file} is empty (at offset ${startOf(pair.key)}): take the line away, or fill it in by hand`,
  );
}

const ended = (text: string): string => (text === '' || text.endsWith('\n') ? text : `${text}\n`);
