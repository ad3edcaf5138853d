import { condition } from './condition.js';
import { text } from './fields.js';
import { head, type RecordOf } from './kind.js';

/** One of shell.yaml’s `conditions`: the shop's own, beside the standard ones. */
export const loadingCondition = head(
  'loading condition',
  ['conditions'],
  { name: text('As printed in the book').required(), condition: condition.required() },
  { structure: true, toldBy: ['name'] },
);

export type LoadingCondition = RecordOf<typeof loadingCondition>;
