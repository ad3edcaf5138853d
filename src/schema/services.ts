import { z } from 'zod';
import { MEDIA, NODE_KINDS, NODE_ROLES } from '../model/services.js';
import { eachOf, type Fields, field } from './fields.js';
import { readId } from './plain-fields.js';
import { record, shared } from './record.js';
import { enumFault, readGauge, readSide } from './worded-fields.js';

/** zones*.yaml: `box`, or `along` with `clear`. */
export const zone = (f: Fields) =>
  record(f, {
    name: f.text('As printed in the book').optional(),
    box: f.positions('Two opposite corners', 2, 2).optional(),
    along: f.positions('The line that the cavity follows', 2).optional(),
    clear: f.twoLengths('Clear inside across and up, as 2 in x 3-1/2 in').optional(),
    concealed: f.yesNo('Closed in for good; yes where not typed').optional(),
    closed_by: f.ids('Panels that close it').optional(),
    carries: field(
      (typed, say) =>
        eachOf(
          typed,
          say,
          'media',
          (one, sayOne) => MEDIA.find((medium) => medium === one) ?? void sayOne(enumFault(one, MEDIA)),
        ),
      'Media that may run in it',
      { type: 'array', items: { type: 'string', enum: MEDIA } },
    ).optional(),
    spare: f.text('Spare ways left in it').optional(),
    pull_cord: f.yesNo('A pull cord lies in it').optional(),
    cord_ends: f.ids('Where the pull cord’s two ends are tied off: panels or nodes').optional(),
    conduit: f.pipeSize('Trade size and kind where it is a conduit, as 3/4 in EMT').optional(),
    drains: f.positions('Drain holes in its floor', 1).optional(),
  });

/** The head of services/*.yaml; its three lists are read record by record. */
export const service = (f: Fields) =>
  z.strictObject({
    ...shared(f),
    service: f.text('Name of the service, as House 12 V'),
    medium: f.oneOf(MEDIA, 'What runs in it'),
  });

const wire = (f: Fields) =>
  z.strictObject({
    awg: field(readGauge, 'American Wire Gauge, as 14 or 2/0', { type: ['string', 'number'] }).optional(),
    area: f.quantity('conductorArea', 'Cross section', 'above zero').optional(),
    type: f.id('A type in library/conductors.yaml').optional(),
    conductors: f.count('Conductors in the run; two for a plus and a return').optional(),
    rating: f.quantity('temperature', 'Temperature rating of the insulation', 'above zero').optional(),
    material: f.oneOf(['copper', 'aluminium'], 'copper where not typed').optional(),
  });

const protection = (f: Fields) =>
  z.strictObject({
    kind: f.text('fuse, breaker, regulator, relief valve …'),
    rating: f.anyQuantity('Its rating').optional(),
    at: f.id('Node that it sits in').optional(),
  });

const carried = (f: Fields) => ({
  colour: f.text('Colour of the wire or pipe, as red/black').optional(),
  conductor: wire(f).meta({ description: 'The wire' }).optional(),
  size: f.pipeSize('Nominal size and material of a pipe or duct, as 1/2 in PEX').optional(),
  working_pressure: f.quantity('pressure', 'Working pressure').optional(),
  marking: f.text('What is printed or tied on it').optional(),
});

/** Amperes or watts. */
const load = (f: Fields, help = 'What it draws, in A or W') =>
  field<{ a?: number; w?: number }>(
    (typed, say) => {
      if (/W\s*$/u.test(String(typed))) {
        const w = f.readQuantity(typed, 'power', 'zero', say);
        return w === undefined ? undefined : { w };
      }
      const a = f.readQuantity(typed, 'current', 'zero', say);
      return a === undefined ? undefined : { a };
    },
    help,
    { type: ['string', 'number'], examples: ['6 A', '25 W'] },
  );

export const circuit = (f: Fields) =>
  record(f, {
    name: f.text('What it feeds').optional(),
    voltage: f.quantity('voltage', 'Voltage at the source', 'above zero').optional(),
    load: load(f).optional(),
    protection: protection(f).meta({ description: 'What protects it: fuse, breaker, regulator or relief valve' }).optional(),
    bonding: f.yesNo('yes for an earth bond or bonding conductor: it wants no fuse').optional(),
    ambient: f.quantity('temperature', 'Hottest air around its wires; 30 C where neither this nor shop.yaml says').optional(),
    ...carried(f),
  });

const slot = (f: Fields) => z.strictObject({ row: f.count('Row, from the top').optional(), number: f.count('Place in the row') });
const side = (help: string) => field(readSide, help, { type: 'string', examples: ['line', 'load', 'supply 1'] });

export const node = (f: Fields) =>
  record(f, {
    kind: f.oneOf(NODE_KINDS, 'Kind of node'),
    name: f.text('What it is').optional(),
    at: f.position('Where it is'),
    panel: f.id('What the shop says opens it').optional(),
    circuit: f.id('Circuit that it is of').optional(),
    tolerance: f.quantity('length', 'How well its place is known').optional(),
    position: f.oneOf(['normally open', 'normally closed'], 'How a valve stands').optional(),
    torque: f.quantity('torque', 'Torque of a terminal').optional(),
    rating: f.anyQuantity('Its rating').optional(),
    load: load(f).optional(),
    marking: f.text('What is printed or tied on it').optional(),
    isolator: f.yesNo('Unlike metals are kept apart here: a tinned lug or a stainless washer at an earth stud').optional(),
    role: f.oneOf(NODE_ROLES, 'What it does to its line: battery, switch, fuse, changeover, charger, pump …').optional(),
    of: f.ids('The component or tank that it belongs to, or several').optional(),
    slot: slot(f).meta({ description: 'Where it sits in its panel, as {row: 2, number: 10}' }).optional(),
    spaces: z
      .array(slot(f).extend({ spare: f.yesNo('Nothing sits there yet').optional() }))
      .meta({ description: 'Of a panel: its spaces, as {row: 1, number: 8, spare: yes}' })
      .optional(),
    terminals: f.quantity('temperature', 'Temperature rating of its terminals, as 75 C', 'above zero').optional(),
    start_load: load(f, 'What it draws while it starts, in A or W').optional(),
  });

const passages = (f: Fields, help: string) =>
  field(
    (typed, say) =>
      eachOf(typed, say, 'ids or places', (one, sayOne) =>
        Array.isArray(one) ? f.readPosition(one, sayOne) : readId(one, sayOne),
      ),
    help,
    { type: 'array' },
  );

export const run = (f: Fields) =>
  record(f, {
    circuit: f.id('Circuit that it is of').optional(),
    from: f.id('Node at one end'),
    to: f.id('Node at the other end'),
    from_side: side('Which side of a two-sided node it begins at: line or load, in or out, supply 1 …').optional(),
    to_side: side('Which side of a two-sided node it ends at').optional(),
    via: f.positions('Way points between the ends').optional(),
    zones: f.ids('Cavities that it runs in').optional(),
    installed_length: f.quantity('length', 'Length as installed', 'above zero').optional(),
    tolerance: f.quantity('length', 'How well its way is known').optional(),
    supports: f.quantity('length', 'Distance between supports', 'above zero').optional(),
    end_supports: f.quantity('length', 'From a terminal to the first support').optional(),
    tags: f.oneOf(['both ends', 'one end', 'none'], 'Where its marking is tied on').optional(),
    sheathed: f.yesNo('In loom, conduit or a sheath over its whole length').optional(),
    grommets: passages(f, 'Where it passes metal in a grommet: ids of what it passes, or places').optional(),
    sealed: passages(f, 'Where it passes an outside panel and the hole is sealed: ids of what it passes, or places').optional(),
    spare: f.yesNo('Laid but not in use').optional(),
    abandoned: f.yesNo('Left in, dead at both ends').optional(),
    ...carried(f),
  });
