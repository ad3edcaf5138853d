import { getOwn } from '../../get-own.js';
import type { PackedRule, Weld } from '../../records/index.js';
import type { BasePart } from './base.js';
import { withoutFiller } from './process.js';

/** Number of an alloy → numbers of the fillers that suit it. */
export type SelectionRows = Readonly<Record<string, readonly string[]>>;

/**
 * Fillers that suit an alloy, by number. Rows for 5052 to 5456, 6061, 6063, 6082 and 7005: filler for strength, ductility, salt
 * water and least cracking, a textbook's Table 3.3. 6005A, and 5356 with 6082: EN 1999-1-1 Table 8.8, unverified citation. 5183 and 5556 with
 * 6061 and 6063: Aluminum Design Manual Table A.4.3, unverified citation. What has no row is not judged.
 */
const SUITED: SelectionRows = {
  '5052': ['5356', '5554'],
  '5083': ['5183', '5356'],
  '5086': ['5183', '5356'],
  '5454': ['5356', '5554'],
  '5456': ['5356', '5556'],
  '6005': ['4043', '5356'],
  '6061': ['4043', '5183', '5356', '5556'],
  '6063': ['4043', '5183', '5356', '5556'],
  '6082': ['4043', '5356'],
  '7005': ['5356', '5556'],
};

/** Alloys with more than 2 % magnesium: ASTM B221M Table 1 (5052 2.2–2.8, 5454 2.4–3.0 …); 5254, 5456 and 5652 (unverified citation). */
const OVER_2_MAGNESIUM = new Set(['5052', '5083', '5086', '5154', '5254', '5454', '5456', '5652']);

/** Why a filler does not suit what it joins. */
export interface UnsuitedFiller {
  /** The part that it does not suit. */
  readonly part: string;
  readonly alloy: string;
  /** `silicon`: it forms brittle magnesium silicide; `unlisted`: no selection row has the two together. */
  readonly why: 'silicon' | 'unlisted';
  /** Numbers of fillers that suit every part joined, or the part blamed where none does. */
  readonly suited: readonly string[];
}

/**
 * Judges a weld's filler against the alloys that it joins. It suits a joint of two alloys where a selection row of one of them has
 * it, unless it is a silicon filler (4xxx) and either has more than 2 % magnesium. Undefined where it suits or cannot be judged.
 */
export function unsuitedFiller(weld: Weld, parts: readonly BasePart[], rows: SelectionRows = SUITED): UnsuitedFiller | undefined {
  const filler = /\d{4}/u.exec(weld.filler ?? '')?.[0];
  if (filler === undefined || withoutFiller(weld.process)) return undefined;
  const known = parts.flatMap(({ id, alloy }) => {
    const number = alloyNumber(alloy);
    return alloy !== undefined && number !== undefined ? [{ id, alloy, number }] : [];
  });
  const brittle = filler.startsWith('4') ? known.find(({ number }) => OVER_2_MAGNESIUM.has(number)) : undefined;
  const listed = known.filter(({ number }) => Object.hasOwn(rows, number));
  const fillersFor = (number: string): readonly string[] => getOwn(rows, number) ?? [];
  const [first] = listed;
  const part = brittle ?? (listed.some(({ number }) => fillersFor(number).includes(filler)) ? undefined : first);
  if (!part) return undefined;
  return {
    part: part.id,
    alloy: part.alloy,
    why: brittle ? 'silicon' : 'unlisted',
    suited: inAll(listed.map(({ number }) => fillersFor(number))) ?? fillersFor(part.number),
  };
}

/** What every list has; undefined where there is no such filler. */
function inAll([first, ...others]: readonly (readonly string[])[]): readonly string[] | undefined {
  const all = first?.filter((filler) => others.every((list) => list.includes(filler)));
  return all && all.length > 0 ? all : undefined;
}

/**
 * The rows built in, with those that the shop keeps in library/rules/ over them: an entry for this rule whose limit names an alloy,
 * then its fillers, as `3003 with 1100, 4043 or 5356`.
 */
export function selectionRows(packed: readonly PackedRule[]): SelectionRows {
  const own = packed.flatMap(({ rule, limit }) => {
    const [alloy, ...fillers] = rule === 'weld.filler-unsuited' ? (limit?.match(/(?<!\d)\d{4}(?!\d)/gu) ?? []) : [];
    return alloy === undefined || fillers.length === 0 ? [] : [[alloy, fillers] as const];
  });
  return { ...SUITED, ...Object.fromEntries(own) };
}

/** `6061` of `6061-T6` or `EN AW-6061`; 6005A counts as 6005. */
const alloyNumber = (alloy = ''): string | undefined => /(?<!\d)[1-9]\d{3}(?!\d)/u.exec(alloy)?.[0];
