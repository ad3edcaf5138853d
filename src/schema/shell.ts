import { z } from 'zod';
import { TANK_USES } from '../model/vehicle.js';
import { condition, readings } from './condition.js';
import type { Fields } from './fields.js';
import { record, shared } from './record.js';
import { standing } from './records.js';

const tyres = (f: Fields) =>
  z.strictObject({
    count: f.count('Tyres on the axle'),
    load_index: z
      .union([f.count('Load index'), z.array(f.count('Load index')).min(1).max(2)])
      .meta({ description: 'Load index; for duals [single, dual]' }),
    inflation: f.quantity('pressure', 'Cold inflation pressure', 'above zero').optional(),
    inflation_for_index: f.quantity('pressure', 'Pressure at which the load index holds', 'above zero').optional(),
    size: f.text('Size as on the side wall').optional(),
    diameter: f.quantity('length', 'Outside diameter; where not typed, from a size as 295/75R22.5', 'above zero').optional(),
    width: f
      .quantity('length', 'Width over the side walls; where not typed, from a size as 295/75R22.5', 'above zero')
      .optional(),
    spacing: f.quantity('length', 'Of duals: between the middles of the two', 'above zero').optional(),
  });

/** One of shell.yaml’s `chassis: {axles: …}` */
export const axle = (f: Fields) =>
  record(f, {
    x: f.station('Rearward from the front axle’s centre line'),
    gawr: f.quantity('mass', 'Gross axle weight rating', 'above zero').optional(),
    suspension: f.quantity('mass', 'Rating of the suspension', 'above zero').optional(),
    wheels: f.quantity('mass', 'Rating of one wheel', 'above zero').optional(),
    track: f.quantity('length', 'Between the tyres’ centre lines', 'above zero').optional(),
    dual: f.yesNo('Dual tyres on each end').optional(),
    lift: f.yesNo('Can be lifted').optional(),
    steered: f.yesNo('Steers').optional(),
    steer_angle: f.quantity('angle', 'Most that a wheel turns to either side', 'above zero').optional(),
    travel: z
      .strictObject({
        bump: f.quantity('length', 'How far the wheels come up from where they stand unladen'),
        rebound: f.quantity('length', 'How far they drop from there'),
      })
      .meta({ description: 'Of the suspension: with tyre size and track it gives the room that the tyres need' })
      .optional(),
    share: z
      .strictObject({
        with: f.id('The axle that it forms a group with'),
        fraction: f.level('Share of the group’s load that this axle takes'),
      })
      .meta({ description: 'Where it shares load with another axle' })
      .optional(),
    spring_rate: f.quantity('stiffness', 'At the axle, both ends together', 'above zero').optional(),
    mass: f.quantity('mass', 'The axle itself, wheels included', 'above zero').optional(),
    tyres: tyres(f).meta({ description: 'The tyres of the axle' }).optional(),
  });

export const tank = (f: Fields) =>
  record(f, {
    contents: f.text('water, grey, black, diesel, propane …'),
    capacity: f.quantity('volume', 'Volume when full', 'above zero'),
    at: f.position('Middle of the tank'),
    density: f.quantity('density', 'Where the contents are not among the known ones', 'above zero').optional(),
    use: f.oneOf(TANK_USES, 'What it is for').optional(),
    of: f.id('The component whose size is this tank’s').optional(),
    size: f.size('Outside size, as 60 in x 20 in x 12 in: along, across, up').optional(),
    ...standing(f),
  });

export const seat = (f: Fields) =>
  record(f, { at: f.position('Middle of the person'), belted: f.yesNo('Has a belt: may be used on the road').optional() });

export const bay = (f: Fields) =>
  record(f, {
    name: f.text('As printed in the book').optional(),
    at: f.position('Middle of the bay'),
    limit: f.quantity('mass', 'Most that the bay itself may carry').optional(),
    size: f.size('Inside size, as 40 in x 24 in x 30 in: along, across, up').optional(),
    ...standing(f),
  });

export const ownCondition = (f: Fields) => z.strictObject({ name: f.text('As printed in the book'), condition: condition(f) });

export const bare = (f: Fields) => z.strictObject({ condition: condition(f), readings: readings(f) });

/** `chassis:` without its axles and its bare weights, which are read each on its own. */
export const chassis = (f: Fields) =>
  z.strictObject({
    description: f.text('What the maker calls it').optional(),
    document: f.text('Incomplete vehicle document or like').optional(),
    gvwr: f.quantity('mass', 'Gross vehicle weight rating', 'above zero').optional(),
    gcwr: f.quantity('mass', 'Gross combination weight rating', 'above zero').optional(),
    frame: z
      .strictObject({
        rail_top_above_ground: f.quantity('length', 'Top of the frame rail over the ground, unladen', 'above zero').optional(),
        rail_spacing: f.quantity('length', 'Outside to outside of the rails', 'above zero').optional(),
        rail_depth: f.quantity('length', 'Depth of a rail', 'above zero').optional(),
        rail_width: f.quantity('length', 'Width of a rail', 'above zero').optional(),
        length: f.quantity('length', 'Length of the rails', 'above zero').optional(),
      })
      .meta({ description: 'The chassis frame' })
      .optional(),
  });

export const datum = (f: Fields) =>
  z.strictObject({ origin: f.offset('Where this shell’s typed origin lies in the standard datum') });

/** shell.yaml without chassis and lists, which are read each on its own. */
export const shell = (f: Fields) =>
  z.strictObject({
    ...shared(f),
    shell: f.id('The shell number: the folder’s name'),
    title: f.text('What the coach is').optional(),
    vin: f.text('Vehicle identification number, 17 characters').optional(),
    customer: z
      .strictObject({
        name: f.text('Customer’s name').optional(),
        place: f.text('Customer’s place').optional(),
        contact: f.text('How to reach the customer').optional(),
      })
      .meta({ description: 'Printed in the owner’s edition only' })
      .optional(),
    envelope: z
      .strictObject({
        length: f.quantity('length', 'Outside length', 'above zero'),
        width: f.quantity('length', 'Outside width', 'above zero'),
        height: f.quantity('length', 'Outside height of the shell', 'above zero'),
      })
      .meta({ description: 'Outside of the finished coach' })
      .optional(),
    care: z.array(care(f)).meta({ description: 'What is to be done to the coach at intervals' }).optional(),
    paint: z.array(paint(f)).meta({ description: 'Paint, where it is' }).optional(),
    parts: z.array(part(f)).meta({ description: 'Where spares are had' }).optional(),
    warranty: z.array(warranty(f)).meta({ description: 'What is covered, by whom, until when' }).optional(),
  });

const care = (f: Fields) =>
  z.strictObject({
    what: f.text('What is to be done'),
    every: f.text('Time or distance, as 6 months'),
    from: f.date('Day from which it is counted').optional(),
    done: f.dates('Days on which it was done').optional(),
  });
const paint = (f: Fields) =>
  z.strictObject({
    where: f.text('What is painted with it'),
    system: f.text('Maker and system').optional(),
    code: f.text('Colour code').optional(),
    lot: f.text('Lot').optional(),
  });
const part = (f: Fields) =>
  z.strictObject({
    of: f.id('The record that it is a spare of'),
    maker_number: f.text('The maker’s number').optional(),
    supplier: f.text('Who sells it').optional(),
    note: f.text('Anything worth knowing').optional(),
  });
const warranty = (f: Fields) =>
  z.strictObject({
    of: f.text('What is covered'),
    until: f.date('Last day').optional(),
    by: f.text('Who gives it').optional(),
    terms: f.text('Its terms').optional(),
  });
