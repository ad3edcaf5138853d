import { dayOf } from '../../quantity/day.js';
import type { Inspection, Person, Qualification } from '../../records/index.js';
import { methodName } from './inspection.js';

/** Why no paper of an inspector covers a look. */
export type InspectorShortfall =
  | { readonly what: 'no method' }
  | { readonly what: 'day'; readonly held: readonly Qualification[] };

/** Undefined where some qualification covers the method on that day. */
export function inspectorShortfall(
  look: Pick<Inspection, 'method' | 'date'>,
  { qualified }: Pick<Person, 'qualified'>,
): InspectorShortfall | undefined {
  const held = qualified.filter(({ method }) => method !== undefined && methodName(method) === methodName(look.method));
  const day = dayOf(look.date);
  if (held.some(({ from, until }) => from <= day && (until === undefined || day <= until))) return undefined;
  return held.length === 0 ? { what: 'no method' } : { what: 'day', held };
}
