import { type FileUnits, parseQuantity } from '../../quantity/parse.js';
import { nearest } from '../../source/nearest.js';
import { found } from '../../source/shown.js';
import type { Fault } from './fault.js';
import { readNumber } from './plain-fields.js';
import type { Read, Say } from './unit-reader.js';

/** `fillet`, `square groove` … with the one that was likely meant first. */
export function enumFault(typed: unknown, values: readonly string[]): Fault {
  const close = typeof typed === 'string' ? nearest(typed, values, 1)[0] : undefined;
  const all = values.map((value) => `\`${value}\``);
  const list = all.length === 1 ? (all[0] as string) : `${all.slice(0, -1).join(', ')} or ${all.at(-1)}`;
  return { found: found(typed), expected: close === undefined ? list : `\`${close}\` (allowed are ${list})` };
}

/** `14 in x 18 in`, `14 x 18 in`: mm, as typed. */
export function readTwoLengths(typed: unknown, units: FileUnits, say: Say): readonly [number, number] | undefined {
  const expected = 'two lengths as `14 in x 18 in`';
  const parts = typeof typed === 'string' ? typed.split(/\s*[x×]\s+|\s+[x×]\s*/u) : [];
  if (parts.length !== 2) return void say({ found: found(typed), expected });
  const [first = '', second = ''] = parts;
  const unit = /[a-z"']+\s*$/iu.exec(second)?.[0] ?? '';
  const a = parseQuantity(/[a-z"']\s*$/iu.test(first) ? first : `${first} ${unit}`.trim(), 'length', units);
  const b = parseQuantity(second, 'length', units);
  if (a.ok && b.ok && a.value > 0 && b.value > 0) return [a.value, b.value];
  const rule = [a, b].some((one) => !one.ok && one.reason === 'unit missing') ? { rule: 'format.unit-missing' } : {};
  return void say({ ...rule, found: found(typed), expected });
}

/** `20 in x 12 in x 8 in`, `20 x 12 x 8 in`: mm, as typed. */
export function readThreeLengths(typed: string, units: FileUnits, say: Say): readonly [number, number, number] | undefined {
  const parts = typed.split(/\s*[x×]\s+|\s+[x×]\s*/u);
  const unit = /[a-z"']+\s*$/iu.exec(parts.at(-1) ?? '')?.[0] ?? '';
  const read = parts.map((part) => parseQuantity(/[a-z"']\s*$/iu.test(part) ? part : `${part} ${unit}`.trim(), 'length', units));
  const values = read.flatMap((one) => (one.ok && one.value > 0 ? [one.value] : []));
  const [a, b, c] = values;
  if (parts.length === 3 && a !== undefined && b !== undefined && c !== undefined) return [a, b, c];
  const rule = read.some((one) => !one.ok && one.reason === 'unit missing') ? { rule: 'format.unit-missing' } : {};
  return void say({ ...rule, found: found(typed), expected: 'three lengths as `20 in x 12 in x 8 in`' });
}

const SIDE = /^(?:line|load|in|out|ac in|ac out|dc|supply [1-9]\d?)$/u;

/** Which side of a two-sided node. */
export const readSide: Read<string> = (typed, say) => {
  if (typeof typed === 'string' && SIDE.test(typed)) return typed;
  const expected = '`line`, `load`, `in`, `out`, `ac in`, `ac out`, `dc` or `supply 1`, `supply 2` …';
  return void say({ found: found(typed), expected });
};

/** Column and row of a point in a picture, from its upper left. */
export const readPixel: Read<readonly [number, number]> = (typed, say) => {
  const [u, v] = Array.isArray(typed) && typed.length === 2 ? typed.map(readNumber) : [];
  if (u !== undefined && v !== undefined && u >= 0 && v >= 0) return [u, v];
  return void say({ found: found(typed), expected: 'column and row in the picture, as `[412, 1630]`' });
};

const SIZE = /^(.*?(?:in|mm|cm|"))\s+(\S.*)$/u;

/** `1/2 in PEX`: nominal size and what it is made of. */
export function readPipeSize(
  typed: unknown,
  units: FileUnits,
  say: Say,
): { text: string; nominalMm: number; material: string } | undefined {
  const expected = 'a nominal size and a material, as `1/2 in PEX`';
  const match = typeof typed === 'string' ? SIZE.exec(typed.trim()) : null;
  if (!match) return void say({ found: found(typed), expected });
  const size = parseQuantity(match[1], 'length', units);
  if (!size.ok || size.value <= 0) return void say({ found: found(typed), expected });
  return { text: (typed as string).trim(), nominalMm: size.value, material: (match[2] as string).trim() };
}

/** American Wire Gauge: `14`, `1/0`, `4/0`; `00` is `2/0`. */
export const readGauge: Read<string> = (typed, say) => {
  const text = String(typed ?? '').trim();
  if (/^[1-4]\/0$/u.test(text)) return text;
  if (/^0{1,4}$/u.test(text)) return `${text.length}/0`;
  if (/^[1-9]\d?$/u.test(text) && Number(text) <= 40) return text;
  return void say({ found: found(typed), expected: 'a wire gauge as `14` or `2/0`' });
};

const FILE = /^(?!.*(?:^|\/)\.\.?(?:\/|$))[^/\\:\p{Cc}][^\\:\p{Cc}]*$/u;

/** A file within the shell's photos folder: never a way out of it. */
export const readPhotoFile: Read<string> = (typed, say) => {
  if (typeof typed === 'string' && typed.length <= 200 && FILE.test(typed)) return typed;
  return void say({
    found: found(typed),
    expected: 'a file in the photos folder, as `P-0231.jpg`',
  });
};
