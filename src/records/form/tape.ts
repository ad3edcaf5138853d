import type { Vec3 } from '../../geometry/vector.js';
import { found } from '../../source/shown.js';
import type { Say } from './fault.js';

/** Reads one length in the units of its file, mm. */
type ReadLength = (typed: unknown, least: 'any' | 'zero', say: Say) => number | undefined;

/** Which way a tape runs from what it is held to. */
export type TapeWord = keyof typeof WORDS;

/** Axis of each word, and the sign of its length there; `side`: away from or towards the centre line. */
const WORDS = {
  'aft of': { axis: 0, sign: 1 },
  'forward of': { axis: 0, sign: -1 },
  'left of': { axis: 1, sign: -1 },
  'right of': { axis: 1, sign: 1 },
  'inboard of': { axis: 1, sign: 'in' },
  'outboard of': { axis: 1, sign: 'out' },
  above: { axis: 2, sign: 1 },
  below: { axis: 2, sign: -1 },
  on: { axis: undefined, sign: 0 },
} as const;

/** One phrase: so far from something that stands there. */
export interface TapePhrase {
  readonly id: string;
  readonly lengthMm: number;
  readonly word: TapeWord;
  readonly sign: 1 | -1 | 0 | 'in' | 'out';
  /** From its centre, and not from its face. */
  readonly centre: boolean;
}

/** A place told as a tape tells it, one axis at a time: a length from the datum, or a phrase. Known once what it hangs on is. */
export class TapePlace {
  constructor(readonly axes: readonly [number | TapePhrase, number | TapePhrase, number | TapePhrase]) {}
}

const AXES = ['x', 'y', 'z'] as const;
const PHRASE =
  /^(?:(?<length>.+?)\s+)?(?<word>aft of|forward of|left of|right of|inboard of|outboard of|above|below|on)\s+(?<centre>cent(?:re|er) of\s+)?(?<id>[\p{L}\p{N}./_-]+)$/iu;
const EXAMPLE = '`24 in aft of P-L-06`, `1 in inboard of SK-L-03`, `14 in above FB-L` or `on P-L-06`';

/** Does a place told so hang on something? */
export const isTaped = (typed: unknown): boolean =>
  (typeof typed === 'string' && typed.includes(',')) ||
  (typeof typed === 'object' && typed !== null && !Array.isArray(typed)) ||
  (Array.isArray(typed) && typed.length === 3 && typed.some((one) => typeof one === 'string' && PHRASE.test(one.trim())));

/** `{x: 24 in aft of P-L-06, y: on SK-L-03, z: 40 in}`, the same in a list, or in one line with commas between. */
export function readTaped(typed: unknown, length: ReadLength, origin: Vec3, say: Say): Vec3 | TapePlace | undefined {
  const parts = partsOf(typed, say);
  if (parts === undefined) return undefined;
  const read = parts.map(([step, value], axis) =>
    readAxis(value, axis as 0 | 1 | 2, length, origin, (fault) => say({ ...fault, path: [...step, ...(fault.path ?? [])] })),
  );
  const [x, y, z] = read;
  if (x === undefined || y === undefined || z === undefined) return undefined;
  return typeof x === 'number' && typeof y === 'number' && typeof z === 'number' ? [x, y, z] : new TapePlace([x, y, z]);
}

type Part = readonly [path: readonly (string | number)[], value: unknown];

function partsOf(typed: unknown, say: Say): readonly Part[] | undefined {
  if (typeof typed === 'string') {
    const parts = typed.split(',').map((one): Part => [[], one.trim()]);
    if (parts.length === 3) return parts;
    return void say({ found: found(typed), expected: 'x, y and z with a comma between, and no comma within a number' });
  }
  if (Array.isArray(typed)) return typed.map((value, i): Part => [[i], value]);
  const block = typed as Readonly<Record<string, unknown>>;
  const strange = Object.keys(block).find((key) => !(AXES as readonly string[]).includes(key));
  const missing = AXES.find((axis) => block[axis] === undefined);
  if (strange !== undefined || missing !== undefined) {
    const what = strange === undefined ? `no \`${missing}\`` : `key \`${strange}\``;
    return void say({ found: what, expected: `\`x\`, \`y\` and \`z\`, each a length or as ${EXAMPLE}` });
  }
  return AXES.map((axis): Part => [[axis], block[axis]]);
}

function readAxis(typed: unknown, axis: 0 | 1 | 2, read: ReadLength, origin: Vec3, say: Say): number | TapePhrase | undefined {
  const match = typeof typed === 'string' ? PHRASE.exec(typed.trim()) : null;
  if (!match?.groups) {
    const value = read(typed, 'any', say);
    return value === undefined ? undefined : value + origin[axis];
  }
  const { length, centre, id = '' } = match.groups;
  const word = (match.groups.word as string).toLowerCase() as TapeWord;
  const told = WORDS[word];
  if (told.axis !== undefined && told.axis !== axis) {
    const fit = (Object.keys(WORDS) as TapeWord[]).filter((one) => WORDS[one].axis === axis).map((one) => `\`${one}\``);
    return void say({ found: `\`${word}\``, expected: `${fit.join(', ')} or \`on\`` });
  }
  if (word === 'on' && length === undefined) return { id, lengthMm: 0, word, sign: 0, centre: true };
  if (word === 'on' || length === undefined) return void say({ found: found(typed), expected: EXAMPLE });
  const lengthMm = read(length, 'zero', say);
  return lengthMm === undefined ? undefined : { id, lengthMm, word, sign: told.sign, centre: centre !== undefined };
}

/** Ids that a place as typed hangs on, each with its way down. */
export function idsInPlace(typed: unknown): readonly { readonly id: string; readonly path: readonly (string | number)[] }[] {
  const one = (value: unknown, path: readonly (string | number)[]) => {
    const id = typeof value === 'string' ? PHRASE.exec(value.trim())?.groups?.id : undefined;
    return id === undefined ? [] : [{ id, path }];
  };
  if (typeof typed === 'string') return typed.split(',').flatMap((part) => one(part, []));
  if (Array.isArray(typed)) return typed.flatMap((value, i) => one(value, [i]));
  if (typeof typed !== 'object' || typed === null) return [];
  return Object.entries(typed).flatMap(([key, value]) => one(value, [key]));
}
