import type { CarriedLoad, LoadAnswer } from '../../query/load/index.js';
import type { Json } from './json.js';

type JsonObject = { readonly [key: string]: Json };

const tenth = (value: number): number => Math.round(value * 100) / 100;

const carriedJson = ({ id, loadA, withA, limitA, over }: CarriedLoad): JsonObject => ({
  id,
  load_a: tenth(loadA),
  with_a: tenth(withA),
  limit_a: limitA === undefined ? null : tenth(limitA),
  over,
});

/** Keys of `load --json`. */
export function loadJson(answer: LoadAnswer): JsonObject {
  const { circuit } = answer;
  return {
    outlet: answer.outlet,
    added_a: tenth(answer.addedA),
    added_w: tenth(answer.addedW),
    voltage_v: answer.voltageV,
    circuit: {
      ...carriedJson(circuit),
      protection_at: circuit.protectionAt ?? null,
      ampacity_a: circuit.ampacityA === undefined ? null : tenth(circuit.ampacityA),
      start_a: circuit.startA === undefined ? null : tenth(circuit.startA),
      others: circuit.others.map(({ id, loadA }) => ({ id, load_a: tenth(loadA) })),
    },
    feeders: answer.feeders.map(carriedJson),
    links: answer.links.map(carriedJson),
    panels: answer.panels.map((panel) => ({ ...carriedJson(panel), spare_spaces: panel.spare })),
    supplies: answer.supplies.map(carriedJson),
    over: answer.over,
    unknown: answer.unknown.map(({ id, what }) => ({ id, what })),
    notes: answer.notes,
  };
}
