import { z } from 'zod';
import { MASS_BASES } from '../model/shell.js';
import { condition, readings } from './condition.js';
import { type Fields, field } from './fields.js';
import { record, statement } from './record.js';
import { readPhotoFile, readPixel } from './worded-fields.js';

/** Where the box lies that something fills. */
export const standing = (f: Fields) => ({
  middle: f.position('Middle of its size, where that is not the place typed as `at`').optional(),
  outside: f.yesNo('It hangs in the open').optional(),
  rides_on: f.id('The slide-out that it moves with').optional(),
});

/** components*.yaml */
export const component = (f: Fields) =>
  record(f, {
    name: f.text('What it is'),
    mass: f.quantity('mass', 'Its mass'),
    at: f.position('Its centre of gravity'),
    basis: f.oneOf(MASS_BASES, 'Where the mass comes from; estimated where not typed').optional(),
    size: f.size('Outside size, as 20 in x 12 in x 8 in: along, across, up').optional(),
    part: f.text('Maker’s part number').optional(),
    serial: f.text('Serial number').optional(),
    tolerance: f.quantity('length', 'How well its place is known').optional(),
    hot: f.oneOf(['dry', 'wet'], 'Exhaust or other hot part: dry, or cooled by water (wet)').optional(),
    keep_clear: f.quantity('length', 'How far wires and pipes must stay off a hot part, where its maker says').optional(),
    ...standing(f),
  });

/** weights*.yaml */
export const ticket = (f: Fields) =>
  record(f, {
    date: f.date('Day of weighing'),
    scale: f.id('Scale, as in library/instruments.yaml').optional(),
    ticket: f.text('Number on the ticket').optional(),
    condition: condition(f).optional(),
    readings: readings(f).optional(),
    gross: f.quantity('mass', 'All axles at once', 'above zero').optional(),
    together: f
      .oneOf(['vehicle', 'group', 'axle', 'wheel'], 'What stood on the scale at once, level with the rest of the wheels')
      .optional(),
    raised: z
      .strictObject({
        axle: f.id('The axle that was lifted, with those that share its load'),
        by: f.quantity('length', 'How high its wheels were lifted', 'above zero'),
        level: f.id('The ticket of the same vehicle weighed level'),
        wheel_radius: f.quantity('length', 'From the ground to the middle of the wheels that stayed down', 'above zero'),
      })
      .meta({ description: 'Weighed with one axle raised, to find the height of the centre of gravity' })
      .optional(),
  });

/** tests*.yaml: the tool decides pass or fail from limit and measured value. */
export const test = (f: Fields) =>
  record(f, {
    kind: f.text('pressure, drop, continuity, insulation, rain, function …'),
    of: f.ids('What was tested'),
    limit: f.anyQuantity('The limit').optional(),
    measured: f.anyQuantity('The value read').optional(),
    start: f.anyQuantity('Value at the start').optional(),
    end: f.anyQuantity('Value at the end').optional(),
    duration: f.quantity('time', 'How long').optional(),
    instrument: f.id('Instrument, as in library/instruments.yaml').optional(),
    start_temperature: f.quantity('temperature', 'At the start').optional(),
    end_temperature: f.quantity('temperature', 'At the end').optional(),
    witness: f.text('Who looked on').optional(),
  });

/** findings*.yaml: nonconformances and what was decided about each. */
export const nonconformance = (f: Fields) =>
  record(f, {
    raised: f.date('When it was found'),
    of: f.ids('What it is about'),
    rules: f.texts('Names of the rules whose warnings it decides').optional(),
    description: f.text('What was found and what was expected'),
    decision: f.oneOf(['rework', 'repair', 'use as is', 'reject'], 'What was decided').optional(),
    reason: f.text('Why').optional(),
    approved_by: f.text('Who approved the decision').optional(),
    closed: f.date('When it was done').optional(),
    tell_owner: f.yesNo('Printed in the owner’s edition').optional(),
  });

/** signoffs*.yaml */
export const signoff = (f: Fields) =>
  record(f, {
    id: f.id('Not needed: made of stage, role and date').optional(),
    stage: f.id('Stage, as in library/stages.yaml'),
    role: f.text('In what role'),
    by: f.id('Who signs, as in library/people.yaml'),
    date: f.date('When'),
    digest: f.text('Digest of what it covers, written by shellbook').optional(),
    entered_by: f.text('Who typed it, where that was another than who signs').optional(),
  });

/** amendments*.yaml */
export const amendment = (f: Fields) =>
  record(f, {
    date: f.date('When'),
    by: f.text('Who'),
    reason: f.text('Why'),
    changes: f.ids('Records that it changes').optional(),
  });

const seenPoint = (f: Fields) =>
  z.strictObject({
    is: f.id('A node, or a member, panel or opening with `end` or `corner`').optional(),
    end: f.oneOf(['low', 'high', 'from', 'to'], 'Which end of a member').optional(),
    corner: f.count('Which corner of a panel or opening, clockwise from the lower front one, seen from outside').optional(),
    at: f.position('Or its place').optional(),
    px: field(readPixel, 'Column and row in the picture, from its upper left, as [412, 1630]', {
      type: 'array',
      items: { type: 'number' },
      minItems: 2,
      maxItems: 2,
    }),
  });

/** photos/photos*.yaml */
export const photo = (f: Fields) =>
  record(f, {
    file: field(readPhotoFile, 'File in the photos folder', { type: 'string' }),
    of: f.ids('What it shows').optional(),
    view: f.text('From where it was taken').optional(),
    taken: f.date('When it was taken').optional(),
    caption: f.text('What to see in it').optional(),
    sha256: f.text('SHA-256 of the file').optional(),
    shows: f.positions('Two opposite corners of the box that it shows', 2, 2).optional(),
    camera: z
      .strictObject({
        at: f.position('Where the camera stood'),
        towards: f.position('The place in the middle of the picture'),
        angle: f.quantity('angle', 'Angle of view, from side to side', 'above zero'),
      })
      .meta({ description: 'From where it was taken, instead of `shows`' })
      .optional(),
    seen: z
      .array(seenPoint(f))
      .meta({ description: 'Points whose place is known, and where they lie in the picture' })
      .optional(),
    vouched: statement(f, 'Of a picture without a camera’s date: who says when it was taken, and why that is known'),
  });

/** declared*.yaml: printed with its author, or the book says "not declared". */
export const declared = (f: Fields) =>
  record(f, {
    kind: f.text('lift, jack, tow, roof load …'),
    at: f.position('Where').optional(),
    rating: f.anyQuantity('The declared value').optional(),
    by: f.text('The engineer’s name and number'),
    document: f.text('Where it is written').optional(),
    of: f.ids('The records that it is declared for').optional(),
  });
