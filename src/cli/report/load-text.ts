import type { Model } from '../../model/shell.js';
import { number } from '../../quantity/format.js';
import type { CarriedLoad, LoadAnswer } from '../../query/load/index.js';
import { nameOf } from './name-of.js';
import type { TerminalPaint } from './paint.js';
import { textTable } from './tables.js';
import { bullets, paragraph } from './wrap.js';

const a = (value: number): string => `${number(value, 1)} A`;

export function loadText(model: Model, answer: LoadAnswer, paint: TerminalPaint): string {
  const { circuit, links, panels, feeders, supplies } = answer;
  const named = (id: string): string => (nameOf(id, model) ? `${id} (${nameOf(id, model)})` : id);
  const row = (what: string, one: CarriedLoad): readonly string[] => [
    what,
    named(one.id),
    a(one.loadA),
    a(one.withA),
    one.limitA === undefined ? 'not recorded' : a(one.limitA),
    one.over ? paint.error('OVER') : '',
  ];
  const rows = [
    row('circuit', circuit),
    ...links.map((one) => row('link', one)),
    ...panels.map((one) => row('panel', one)),
    ...feeders.map((one) => row('feeder', one)),
    ...supplies.map((one) => row('supply', one)),
  ];
  const columns = [
    { head: '' },
    { head: 'id', wrap: true },
    { head: 'now', align: 'right' as const },
    { head: 'then', align: 'right' as const },
    { head: 'limit', align: 'right' as const },
    { head: '' },
  ];
  const spare = panels.flatMap((one) =>
    one.spare.length > 0 ? [`Spare breaker spaces in ${one.id}: ${one.spare.join('; ')}.`] : [],
  );
  return [
    paint.strong(
      `${number(answer.addedW)} W (${a(answer.addedA)} at ${number(answer.voltageV, 1)} V) more at ${named(answer.outlet)}`,
    ),
    textTable(columns, rows),
    paragraph(
      circuit.others.length > 0
        ? `On ${circuit.id}: ${circuit.others.map((one) => `${named(one.id)} ${a(one.loadA)}`).join(', ')}.`
        : `Nothing else is recorded on ${circuit.id}.`,
    ),
    ...(circuit.startA === undefined ? [] : [paragraph(`While the largest of them starts: ${a(circuit.startA)}.`)]),
    ...spare.map((one) => paragraph(one)),
    verdict(answer, paint),
    bullets(answer.notes),
  ].join('\n\n');
}

function verdict({ over, unknown }: LoadAnswer, paint: TerminalPaint): string {
  if (over) return paint.error('NO: something on the way is over its limit.');
  if (unknown.length > 0)
    return `${paint.warning('NOT PROVED. Record:')}\n${bullets(unknown.map(({ id, what }) => `${id}: ${what}`))}`;
  return paint.good('Yes, by the record.');
}
