import type { Thought } from '../compute/weights/what-if.js';
import type { Vec3 } from '../geometry/vector.js';
import { loadStore } from '../model/load.js';
import type { StoreText } from '../model/load-types.js';
import type { Model } from '../model/shell.js';
import { parseQuantity } from '../quantity/parse.js';
import { findables } from '../query/lookup/index.js';
import { nearest } from '../source/nearest.js';
import { UserError } from '../user-error.js';
import { unitsOnEach } from './commands/near.js';

/** `600 lb @ B1-R`, or with a place instead of an id: `80 lb @ 120in,-38in,10in`, `80 lb @ 24 in aft of P-L-06, on FB-L, 3 in above FB-L`. */
export async function thoughtOf(model: Model, typed: string, texts: () => Promise<StoreText>): Promise<Thought> {
  const [mass, where, ...more] = typed.split('@').map((part) => part.trim());
  if (!mass || !where || more.length > 0)
    throw new UserError(
      `Found \`${typed}\` after --with; should be a mass, @ and a place: "600 lb @ B1-R" or "80 lb @ 120in,-38in,10in"`,
    );
  const read = parseQuantity(mass, 'mass');
  if (!read.ok) throw new UserError(`${read.message} (the mass in \`${typed}\`)`);
  const bay = model.shell.bays.some((one) => one.id === where) ? { bay: where } : {};
  return { massKg: read.value, at: await placeOf(model, where, texts), ...bay };
}

async function placeOf(model: Model, where: string, texts: () => Promise<StoreText>): Promise<Vec3> {
  const { shell } = model;
  const points = new Map<string, Vec3 | undefined>([
    ...findables(shell).map((one): [string, Vec3 | undefined] => [one.id, one.position ?? one.path[0]]),
    ...[...shell.tanks, ...shell.seats, ...shell.bays].map((one): [string, Vec3] => [one.id, one.at]),
    ...shell.chassis.axles.map((axle): [string, Vec3] => [axle.id, [axle.xMm, 0, 0]]),
  ]);
  if (points.has(where)) {
    const at = points.get(where);
    if (at) return at;
    throw new UserError(`${where} has no recorded place: give one, as \`80 lb @ 120in,-38in,10in\``);
  }
  if (TAPE.test(where)) return tapedPlace(model, where, await texts());
  if (where.includes(',')) return lengths(where);
  const near = nearest(where, points.keys(), 2);
  const did = near.length > 0 ? ` Closest: ${near.join(', ')}.` : '';
  throw new UserError(`No record \`${where}\` in ${shell.id}.${did} Write an id, or a place as 120in,-38in,10in`);
}

const TAPE = /\b(?:aft of|forward of|left of|right of|inboard of|outboard of|above|below|on) /u;
const TRIAL = 'WHAT-IF';

/** A place as a tape tells it: read as the place of a record would be, beside the shell's own. */
function tapedPlace({ shell }: Model, where: string, text: StoreText): Vec3 {
  const [x = '', y = '', z = '', ...more] = where.split(',').map((part) => part.trim());
  if (z === '' || more.length > 0)
    throw new UserError(
      `Found \`${where}\`; should be three phrases, x, y and z, separated by commas: "24 in aft of P-L-06, on FB-L, 3 in above FB-L"`,
    );
  const file = `shells/${shell.id}/components-what-if.yaml`;
  const line = JSON.stringify([{ id: TRIAL, name: 'what if', mass: '1 kg', at: { x, y, z }, basis: 'estimated' }]);
  const loaded = loadStore({ ...text, files: new Map([...text.files, [file, `${line}\n`]]) }).shells.get(shell.id);
  const at = loaded?.model.shell.components.find((one) => one.id === TRIAL)?.at;
  if (at) return at;
  const fault = loaded?.findings.find((one) => one.place.file === file);
  throw new UserError(`Found \`${where}\`: ${fault?.message ?? 'no place that can be known'}`);
}

const lengths = (where: string): Vec3 =>
  unitsOnEach(where).map((one, i) => {
    const read = parseQuantity(one, 'length');
    if (!read.ok) throw new UserError(`${read.message} (${'xyz'[i]} of the place)`);
    return read.value;
  }) as unknown as Vec3;
