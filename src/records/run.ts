import type { Vec3 } from '../geometry/vector.js';
import { id, ids, measured, oneOf, plainField, positions, quantity, yesNo } from './fields.js';
import { readId } from './form/plain-fields.js';
import { eachOf } from './form/unit-reader.js';
import { readSide } from './form/worded-fields.js';
import { kind, type RecordOf } from './kind.js';
import { CARRIED } from './wire.js';

const passages = (help: string) =>
  measured<readonly (string | Vec3)[]>(
    (units) => (typed, say) =>
      eachOf(typed, say, 'ids or places', (one, sayOne) =>
        Array.isArray(one) ? units.position(one, sayOne) : readId(one, sayOne),
      ),
    help,
    { type: 'array' },
    { as: 'other' },
    { idsAt: ['*'] },
  );

const side = (help: string) => plainField(readSide, help, { type: 'string', examples: ['line', 'load', 'supply 1'] }).describes();

/** The runs of services/*.yaml: wires and pipes, from node to node. */
export const run = kind(
  'run',
  { in: 'service', list: 'runs' },
  {
    circuit: id('Circuit it belongs to').names('circuit'),
    from: id('Node at one end').required().notLent().names('node'),
    to: id('Node at the other end').required().notLent().names('node'),
    from_side: side('Which side of a two-sided node it begins at: line or load, in or out, supply 1 …'),
    to_side: side('Which side of a two-sided node it ends at'),
    via: positions('Way points between the ends').notLent().usual([]).called('waypoints', 'waypoint', 'way', 'point'),
    zones: ids('Cavities that it runs in').names('zone').usual([]).called('zone', 'route'),
    installed_length: quantity('length', 'Length as installed', 'above zero').ofOne().notLent().called('length'),
    tolerance: quantity('length', 'How well its way is known'),
    supports: quantity('length', 'Distance between supports', 'above zero'),
    end_supports: quantity('length', 'From a terminal to the first support'),
    tags: oneOf(['both ends', 'one end', 'none'], 'Where its marking is tied on'),
    sheathed: yesNo('In loom, conduit or a sheath over its whole length'),
    grommets: passages('Where it passes metal in a grommet: ids of what it passes, or places')
      .names('member', 'panel', 'zone')
      .usual([]),
    sealed: passages('Where it passes an outside panel and the hole is sealed: ids of what it passes, or places').names('panel'),
    spare: yesNo('Laid but not in use'),
    abandoned: yesNo('Left in, dead at both ends'),
    ...CARRIED,
  },
  {
    /** `path`: the whole way, ends included, mm: from node, via points, to node. Empty where an end is unknown. */
    finish: (read) => ({ ...read, path: [] as readonly Vec3[] }),
    structure: true,
    asked: ['id', 'circuit', 'from', 'to', 'via', 'zones', 'installed_length', 'tolerance', 'date', 'photos'],
    called: { run: 'id', wire: 'id', wireno: 'id', installed: 'date' },
    event: ['date'],
    pictured: 1,
  },
);

export type Run = RecordOf<typeof run>;
