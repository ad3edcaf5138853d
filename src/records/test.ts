import { id, ids, listed, quantity, quantityOfAnyKind, text } from './fields.js';
import { kind, type RecordOf } from './kind.js';

const DECIDED = 'shellbook decides pass or fail from `limit` and `measured`';

/** tests*.yaml: the tool decides pass or fail from limit and measured value. */
export const test = kind(
  'test',
  { in: 'shell', list: 'tests' },
  {
    kind: listed('test', 'What was tested').required().as('testKind').called('type').asLast(),
    of: ids('What was tested').required().namesAny().called('tested', 'circuit'),
    limit: quantityOfAnyKind('The limit'),
    measured: quantityOfAnyKind('The value read').notLent().called('result', 'reading'),
    start: quantityOfAnyKind('Value at the start'),
    end: quantityOfAnyKind('Value at the end'),
    duration: quantity('time', 'How long'),
    instrument: id('Instrument, as in library/instruments.yaml')
      .names('instrument')
      .called('gauge')
      .asLast()
      .traced('instrument'),
    start_temperature: quantity('temperature', 'At the start'),
    end_temperature: quantity('temperature', 'At the end'),
    witness: text('Who looked on').person().leansOn('person'),
  },
  {
    never: { result: DECIDED, passed: DECIDED, pass: DECIDED },
    asked: ['id', 'kind', 'of', 'limit', 'measured', 'duration', 'instrument', 'by', 'date', 'stage'],
    called: { test: 'id', tester: 'by' },
    stands: 'evidence',
    event: ['date'],
    pictured: 10,
    repeated: {
      what: 'readings and dates',
      least: 1,
      same: ['date', 'kind', 'instrument'],
      readings: ['measured', 'start', 'end', 'start_temperature', 'end_temperature', 'duration'],
      leastReadings: 3,
      word: 'date',
    },
  },
);

export type Test = RecordOf<typeof test>;
