import { parseQuantity } from '../quantity/parse.js';
import { columnFor } from './columns.js';
import type { EntryKind } from './homes.js';
import { type Data, flow, isData } from './yaml-text.js';

/** The unit that shows a slip: what was typed in inches stands in millimetres beside it. */
const BESIDE: Readonly<Record<string, readonly [unit: string, digits: number]>> = {
  length: ['mm', 1],
  mass: ['kg', 2],
};

/** A record as it was understood, in words: `cut_length: 160 in (4064 mm)`. */
export function understood(kind: EntryKind, data: Data): string {
  return Object.entries(data)
    .filter(([key]) => key !== 'id')
    .map(([key, value]) => `${key}: ${shownValue(kind, [key], value)}`)
    .join(', ');
}

function shownValue(kind: EntryKind, path: readonly string[], value: unknown): string {
  if (isData(value)) {
    const inner = Object.entries(value).map(([key, one]) => `${key}: ${shownValue(kind, [...path, key], one)}`);
    return `{${inner.join(', ')}}`;
  }
  const form = columnFor(kind, path.join('.'))?.form;
  if (form?.as === 'place' && Array.isArray(value)) {
    const lengths = value.map((one) => inside(one, 'length'));
    const all = lengths.every((one) => one !== undefined);
    return `${flow(value)}${all ? ` (x ${lengths[0]}, y ${lengths[1]}, z ${lengths[2]} mm)` : ''}`;
  }
  if (form?.as !== 'quantity') return flow(value);
  const beside = BESIDE[form.dimension];
  const number = beside === undefined ? undefined : inside(value, form.dimension as 'length' | 'mass', beside[1]);
  const same = beside !== undefined && String(value).trim().endsWith(` ${beside[0]}`);
  return number === undefined || same ? flow(value) : `${flow(value)} (${number} ${beside?.[0]})`;
}

function inside(value: unknown, dimension: 'length' | 'mass', digits = 1): string | undefined {
  const read = parseQuantity(value, dimension);
  return read.ok ? String(Number(read.value.toFixed(digits))) : undefined;
}
