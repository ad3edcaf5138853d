import { found } from '../source/shown.js';
import { CLOSED_LISTS } from './closed-lists.js';
import { block, count, date, id, list, listed, oneOf, plainField, position, prose, quantity, text, yesNo } from './fields.js';
import { readId } from './form/plain-fields.js';
import { kind, type RecordOf } from './kind.js';
import type { ModelOf } from './types.js';

export const WELD_TYPES = ['fillet', 'square groove', 'bevel groove', 'V groove', 'flare', 'plug', 'seam'] as const;
export type WeldType = (typeof WELD_TYPES)[number];

const PAIRS = 'two ids as `[SF-L, CB-04]`, or a list of such pairs';

/** One pair, or several for like joints. */
const joins = plainField<readonly (readonly [string, string])[]>(
  (typed, say) => {
    if (!Array.isArray(typed) || typed.length === 0)
      return void say({ found: Array.isArray(typed) ? 'empty list' : found(typed), expected: PAIRS });
    const one = !Array.isArray(typed[0]);
    const pairs = (one ? [typed] : typed) as unknown[];
    const read = pairs.map((pair, i) => {
      const at = one ? [] : [i];
      if (!Array.isArray(pair) || pair.length !== 2) {
        const what = Array.isArray(pair) ? `list of ${pair.length}` : found(pair);
        return void say({ found: what, expected: PAIRS, path: at });
      }
      const ids = pair.map((one_, j) => readId(one_, (fault) => say({ ...fault, path: [...at, j] })));
      return ids.includes(undefined) ? undefined : (ids as [string, string]);
    });
    return read.includes(undefined) ? undefined : (read as [string, string][]);
  },
  'The two parts that it joins, or several pairs for like joints',
  { type: 'array' },
  { as: 'other' },
  ['*', '*.*'],
);

const inspection = {
  method: listed('method', 'How it was looked at')
    .required()
    .called('method')
    .leads(...CLOSED_LISTS.method),
  by: id('Inspector, as in library/people.yaml').required().names('person').person().called('inspector'),
  date: date('The day of the inspection').required().called('inspected'),
  result: oneOf(['accept', 'reject'], 'What the inspector found').required().called('result'),
  reason: prose('Why it was rejected'),
  repair: count('Number of the repair that this looked at', 0),
  note: prose('Anything worth knowing').describes('early'),
};
export type Inspection = ModelOf<typeof inspection>;

/** welds*.yaml */
export const weld = kind(
  'weld',
  { in: 'shell', list: 'welds' },
  {
    joins: joins.required().notLent().names('member', 'panel').called('parts', 'joint', 'members'),
    type: oneOf(WELD_TYPES, 'Type of weld').required().asLast(),
    size: quantity('length', 'Leg, throat or depth as the type has it', 'above zero').required().called('leg').asLast(),
    length: quantity('length', 'Of each joint', 'above zero').required(),
    sides: oneOf(['arrow', 'other', 'both'], 'Side of the joint; arrow where not typed').usual('arrow').asLast(),
    process: text('GMAW, GTAW … or the ISO 4063 number').required().asLast(),
    procedure: id('Welding procedure, as in library/procedures.yaml')
      .names('procedure')
      .called('wps')
      .asLast()
      .traced('procedure'),
    filler: text('Filler, as ER5356').called('wire').asLast(),
    position: text('Position, as 2F').asLast(),
    welder: id('Welder, as in library/people.yaml').names('person').person().ofOne().asLast().traced('welder'),
    at: position('Where it is').notLent(),
    all_round: yesNo('Welded all round').usual(false),
    site: yesNo('Welded away from the shop: its symbol carries the flag'),
    inspections: list(block(inspection), 'Every look at it, rejects too').usual([]).ofOne().notLent(),
  },
  {
    structure: true,
    asked: [
      ...(['id', 'joins', 'type', 'size', 'length', 'sides', 'process', 'procedure', 'filler', 'position'] as const),
      ...(['stage', 'date', 'welder', 'inspections'] as const),
    ],
    called: { weld: 'id', weldno: 'id', welded: 'date' },
    event: ['date'],
    pictured: 3,
    repeated: {
      what: 'ids, welders and dates',
      least: 3,
      same: ['date', 'id'],
      readings: ['welder', 'joins', 'inspections'],
      leastReadings: 3,
      word: 'date',
    },
  },
);

export type Weld = RecordOf<typeof weld>;
