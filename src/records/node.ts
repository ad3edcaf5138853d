import {
  block,
  celsius,
  count,
  id,
  ids,
  list,
  load,
  oneOf,
  position,
  quantity,
  quantityOfAnyKind,
  text,
  yesNo,
} from './fields.js';
import { kind, type RecordOf } from './kind.js';
import type { ModelOf } from './types.js';

export const NODE_KINDS = [
  ...(['source', 'panel', 'terminal', 'splice', 'connector', 'junction'] as const),
  ...(['valve', 'fitting', 'drain', 'device', 'load', 'test-point'] as const),
] as const;
export type NodeKind = (typeof NODE_KINDS)[number];

/** What a node does to its line. */
export const NODE_ROLES = [
  ...(['battery', 'generator', 'alternator', 'shore inlet', 'solar panel'] as const),
  ...(['tank', 'cylinder', 'city inlet', 'reservoir'] as const),
  ...(['switch', 'breaker', 'fuse', 'shut-off', 'plug', 'changeover'] as const),
  ...(['charger', 'converter', 'inverter', 'solar regulator', 'gas regulator', 'check valve', 'diode'] as const),
  ...(['inverter charger', 'pump', 'compressor', 'heater', 'accumulator', 'capacitor'] as const),
  ...(['busbar', 'junction', 'splice', 'terminal'] as const),
  ...(['outlet', 'appliance', 'lamp', 'tap', 'fixture', 'drain cock'] as const),
] as const;
export type NodeRole = (typeof NODE_ROLES)[number];

const slot = { row: count('Row, from the top'), number: count('Place in the row').required() };
/** Where something sits in a panel of rows: counted from 1, from the upper left. */
export type Slot = ModelOf<typeof slot>;

/** The nodes of services/*.yaml: where runs begin, end, join or are switched. */
export const node = kind(
  'node',
  { in: 'service', list: 'nodes' },
  {
    kind: oneOf(NODE_KINDS, 'Kind of node').required().as('nodeKind').called('type').asLast(),
    name: text('What it is').called('description').traced('part'),
    at: position('Where it is; absent where no tape was laid yet').notLent().called('location', 'position', ''),
    panel: id('What the shop says opens it').names('panel').called('access'),
    circuit: id('Circuit it belongs to').names('circuit'),
    tolerance: quantity('length', 'How well its place is known'),
    position: oneOf(['normally open', 'normally closed'], 'Whether the valve is normally open or closed'),
    torque: quantity('torque', 'Torque of a terminal').ofOne(),
    rating: quantityOfAnyKind('Its rating'),
    load: load('What it draws, in A or W'),
    marking: text('What is printed or tied on it').called('label'),
    insulator: yesNo('Unlike metals are kept apart here: a tinned lug or a stainless washer at an earth stud'),
    isolator: yesNo('Before it was called `insulator`: read as that'),
    role: oneOf(NODE_ROLES, 'What it does to its line: battery, switch, fuse, changeover, charger, pump …').describes(),
    of: ids('The component or tank that it belongs to, or several').names('component', 'tank').describes(),
    slot: block(slot, 'Where it sits in its panel, as {row: 2, number: 10}').describes(),
    spaces: list(
      block({ ...slot, spare: yesNo('Nothing sits there yet').usual(false) }),
      'Of a panel: its spaces, as {row: 1, number: 8, spare: yes}',
    ).describes(),
    terminals: celsius('Temperature rating of its terminals, as 75 C', 'above zero'),
    start_load: load('What it draws while it starts, in A or W'),
  },
  {
    structure: true,
    asked: ['id', 'kind', 'role', 'name', 'at', 'circuit', 'of', 'tolerance', 'panel'],
    called: { node: 'id' },
    pictured: 2,
    finish: ({ isolator, insulator = isolator, ...rest }) => ({ ...rest, ...(insulator === undefined ? {} : { insulator }) }),
  },
);

export type ServiceNode = RecordOf<typeof node>;
