import type { Finding } from '../../finding.js';
import { type FileUnits, lookUp } from '../../quantity/parse.js';
import { type Dimension, EXAMPLES, UNITS } from '../../quantity/units.js';
import { nearest } from '../../source/nearest.js';
import { found, shown } from '../../source/shown.js';
import type { NodeSource } from '../../source/source.js';

/** The `units: {length: in, mass: lb}` line at the head of a file: what bare numbers are read in. */
export function readUnits(typed: unknown, source: NodeSource, say: (finding: Finding) => void): FileUnits {
  if (typed === undefined || typed === null) return {};
  const tell = (rule: string, message: string, place: Finding['place']): void =>
    say({ rule, severity: 'error', message, ids: [], place });
  if (typeof typed !== 'object' || Array.isArray(typed)) {
    tell(
      'format.wrong-value',
      `Found ${found(typed)} for \`units\`, expected units as \`{length: in, mass: lb}\``,
      source.place('units'),
    );
    return {};
  }
  const units: Partial<Record<Dimension, string>> = {};
  for (const [key, symbol] of Object.entries(typed)) {
    if (!Object.hasOwn(EXAMPLES, key)) {
      const known = nearest(key, Object.keys(EXAMPLES), 1)[0];
      const expected = known === undefined ? 'length, mass, volume, pressure or another quantity' : `\`${known}\``;
      tell(
        'format.unknown-key',
        `Found the key \`${shown(key)}\` in \`units\`, expected ${expected}`,
        source.placeOfKey('units', key),
      );
    } else if (typeof symbol === 'string' && lookUp(symbol)?.dimension === key) units[key as Dimension] = symbol;
    else {
      const known = Object.keys(UNITS).filter((name) => UNITS[name]?.dimension === key);
      const expected = `a unit of ${key}: ${known.map((name) => `\`${name}\``).join(', ')}`;
      tell(
        'format.wrong-value',
        `Found the unit ${found(symbol)} for \`${key}\` in \`units\`, expected ${expected}`,
        source.place('units', key),
      );
    }
  }
  return units;
}
