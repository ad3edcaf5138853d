import { amps, length, number, percent, torque, type UnitSystem, volume } from '../../quantity/format.js';
import type { Fact } from '../../query/lookup/types.js';
import type { Json } from './json.js';

/** A fact as a person reads it. */
export function factText({ value, in: unit }: Fact, units: UnitSystem): string {
  if (typeof value === 'string') return value;
  if (typeof value !== 'number') return value.join(', ');
  switch (unit) {
    case 'mm':
      return length(value, units);
    case 'nm':
      return torque(value, units);
    case 'l':
      return units === 'metric'
        ? `${number(value, 1)} L`
        : units === 'us'
          ? volume(value / 1000, 'us')
          : `${volume(value / 1000, 'us')} (${number(value, 1)} L)`;
    case 'a':
      return amps(value);
    case 'fraction':
      return percent(value, 0);
    default:
      return number(value, value % 1 === 0 ? 0 : 1);
  }
}

const SUFFIX: Readonly<Record<NonNullable<Fact['in']>, string>> = {
  mm: '_mm',
  nm: '_nm',
  l: '_l',
  a: '_a',
  fraction: '_percent',
};

/** `{torque_nm: 15, fed_through: [..]}`: keys with the unit as suffix where the value is a number. */
export function factsJson(facts: readonly Fact[]): { readonly [key: string]: Json } {
  return Object.fromEntries(
    facts.map(({ head, value, in: unit }) => {
      const key = head.toLowerCase().replace(/[^a-z0-9]+/gu, '_');
      if (typeof value !== 'number' || unit === undefined) return [key, value];
      return [`${key}${SUFFIX[unit]}`, unit === 'fraction' ? value * 100 : value];
    }),
  );
}
