import { add, type Vec3 } from '../../geometry/vector.js';
import { type FileUnits, parseQuantity } from '../../quantity/parse.js';
import type { Dimension } from '../../quantity/units.js';
import { found } from '../../source/shown.js';
import type { Say } from './fault.js';

export type { Say } from './fault.js';

import { isTaped, readTaped } from './tape.js';

/** Undefined once a fault was said. */
export type Read<T> = (typed: unknown, say: Say) => T | undefined;

/** What a quantity may be: above zero, zero too, or below zero as well. */
export type Least = 'above zero' | 'zero' | 'any';

/** Reads what depends on the file: bare numbers in its units, places from the typed origin of its shell. */
export class UnitReader {
  constructor(
    readonly units: FileUnits = {},
    private readonly origin: Vec3 = [0, 0, 0],
  ) {}

  /** In the unit used inside (see quantity/units.ts). */
  quantity(typed: unknown, dimension: Dimension, least: Least, say: Say): number | undefined {
    const read = parseQuantity(typed, dimension, this.units);
    if (!read.ok) {
      const rule = read.reason === 'unit missing' ? 'format.unit-missing' : undefined;
      return void say({ ...(rule ? { rule } : {}), found: read.found, expected: read.expected });
    }
    if (least === 'any' || read.value > 0 || (least === 'zero' && read.value === 0)) return read.value;
    return void say({ found: found(typed), expected: least === 'zero' ? 'zero or more' : 'more than zero' });
  }

  /** A percentage or level, 0 to 1. */
  level(typed: unknown, say: Say): number | undefined {
    const value = this.quantity(typed, 'fraction', 'any', say);
    if (value === undefined || (value >= 0 && value <= 1)) return value;
    const percent =
      value >= 2 && value <= 100 && !String(typed).includes('%') ? `: write \`${String(typed)} %\` for a percentage` : '';
    return void say({ found: found(typed), expected: `a level or share between 0 and 1 (0 % and 100 %)${percent}` });
  }

  /** Distance rearward in the standard datum, mm. */
  station(typed: unknown, say: Say): number | undefined {
    const value = this.quantity(typed, 'length', 'any', say);
    return value === undefined ? undefined : value + this.origin[0];
  }

  /** A place in the standard datum, mm; one that hangs on something is put in its place once that is known (model/tape.ts). */
  position(typed: unknown, say: Say): Vec3 | undefined {
    if (isTaped(typed))
      return readTaped(typed, (one, least, sayOne) => this.quantity(one, 'length', least, sayOne), this.origin, say) as
        | Vec3
        | undefined;
    const read = this.offset(typed, say);
    return read && add(read, this.origin);
  }

  /** Three lengths that are no place: no datum shift. */
  offset(typed: unknown, say: Say): Vec3 | undefined {
    if (!Array.isArray(typed)) return void say({ found: found(typed), expected: 'three lengths as `[64 in, -48 in, 96 in]`' });
    if (typed.length !== 3) {
      return void say({ found: `a list of ${typed.length}`, expected: 'three lengths as `[64 in, -48 in, 96 in]`' });
    }
    const values = typed.map((one, i) =>
      this.quantity(one, 'length', 'any', (fault) => say({ ...fault, path: [i, ...(fault.path ?? [])] })),
    );
    const [x, y, z] = values;
    return x === undefined || y === undefined || z === undefined ? undefined : [x, y, z];
  }

  /** Places in the standard datum, at least `least` of them and at most `most`. */
  positions(typed: unknown, say: Say, least: number, most = Number.POSITIVE_INFINITY): readonly Vec3[] | undefined {
    const read = eachOf(typed, say, 'places, each as `[64 in, -48 in, 96 in]`', (one, sayOne) => this.position(one, sayOne));
    if (!read) return undefined;
    if (read.length < least) return void say({ found: `a list of ${read.length}`, expected: `at least ${least} places` });
    if (read.length > most) return void say({ found: `a list of ${read.length}`, expected: `${most} places` });
    return read;
  }
}

/** Reads each item of a list; undefined once a fault was said of one of them. */
export function eachOf<T>(typed: unknown, say: Say, wanted: string, read: Read<T>): readonly T[] | undefined {
  if (!Array.isArray(typed)) return void say({ found: found(typed), expected: `a list of ${wanted}` });
  const values = typed.map((one, i) => read(one, (fault) => say({ ...fault, path: [i, ...(fault.path ?? [])] })));
  return values.includes(undefined) ? undefined : (values as readonly T[]);
}

/** Reads each item of a list; a single value stands for a list of one. */
export const oneOrMore =
  <T>(wanted: string, read: Read<T>): Read<readonly T[]> =>
  (typed, say) => {
    if (Array.isArray(typed)) return eachOf(typed, say, wanted, read);
    const one = read(typed, say);
    return one === undefined ? undefined : [one];
  };
