import { z } from 'zod';
import { FACINGS, MEMBER_CLASSES, PANEL_KINDS, WELD_TYPES } from '../model/structure.js';
import { found } from '../source/shown.js';
import { type Fields, field } from './fields.js';
import { readId } from './plain-fields.js';
import { record } from './record.js';

/** members*.yaml: `section`, `from` and `to` for a tube or beam, `plate` for a plate. */
export const member = (f: Fields) =>
  record(f, {
    part: f.text('What it is, as on the cut list').optional(),
    alloy: f.id('Alloy and temper, as in library/materials.yaml'),
    heat: f.text('Heat or lot number').optional(),
    offcut_of: f.id('The member whose bar or sheet this was cut from: it has the same heat').optional(),
    class: f
      .oneOf(MEMBER_CLASSES, 'primary (where not typed): the shell stands on it; secondary: a bracket, a rail to screw to')
      .optional(),
    section: f.id('Section, as in library/sections.yaml').optional(),
    from: f.position('One end of its middle line').optional(),
    to: f.position('The other end').optional(),
    roll: f.quantity('angle', 'Turn about the line; 0 has the depth upright', 'any').optional(),
    cut_length: f.quantity('length', 'Length as cut', 'above zero').optional(),
    plate: z
      .strictObject({
        thickness: f.quantity('length', 'Plate thickness', 'above zero'),
        outline: f.positions('Corners in order, on the middle plane', 3),
      })
      .meta({ description: 'Where it is a plate: its thickness and corners' })
      .optional(),
  });

const PAIRS = 'two ids as `[SF-L, CB-04]`, or a list of such pairs';

/** One pair, or several for like joints. */
const joins = field<readonly (readonly [string, string])[]>(
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
      const ids = pair.map((id, j) => readId(id, (fault) => say({ ...fault, path: [...at, j] })));
      return ids.includes(undefined) ? undefined : (ids as [string, string]);
    });
    return read.includes(undefined) ? undefined : (read as [string, string][]);
  },
  'The two parts that it joins, or several pairs for like joints',
  { type: 'array' },
);

const inspection = (f: Fields) =>
  z.strictObject({
    method: f.text('VT, PT, RT, UT …'),
    by: f.id('Inspector, as in library/people.yaml'),
    date: f.date('When'),
    result: f.oneOf(['accept', 'reject'], 'What the inspector found'),
    reason: f.text('Why it was rejected').optional(),
    repair: f.count('Number of the repair that this looked at', 0).optional(),
    note: f.text('Anything worth knowing').optional(),
  });

/** welds*.yaml */
export const weld = (f: Fields) =>
  record(f, {
    joins,
    type: f.oneOf(WELD_TYPES, 'Type of weld'),
    size: f.quantity('length', 'Leg, throat or depth as the type has it', 'above zero'),
    length: f.quantity('length', 'Of each joint', 'above zero'),
    sides: f.oneOf(['arrow', 'other', 'both'], 'Side of the joint; arrow where not typed').optional(),
    process: f.text('GMAW, GTAW … or the ISO 4063 number'),
    procedure: f.id('Welding procedure, as in library/procedures.yaml').optional(),
    filler: f.text('Filler, as ER5356').optional(),
    position: f.text('Position, as 2F').optional(),
    welder: f.id('Welder, as in library/people.yaml').optional(),
    at: f.position('Where it is').optional(),
    all_round: f.yesNo('Welded all round').optional(),
    site: f.yesNo('Welded away from the shop: its symbol carries the flag').optional(),
    inspections: z.array(inspection(f)).meta({ description: 'Every look at it, rejects too' }).optional(),
  });

const fixing = (f: Fields) =>
  z.strictObject({
    method: f.text('bonded, screws, rivets, hinged …'),
    count: f.count('Number of fasteners').optional(),
    driver: f.text('Tool that opens it, as 3/16 hex').optional(),
    adhesive: f.text('Adhesive').optional(),
    lot: f.text('Adhesive lot').optional(),
    expires: f.date('Adhesive’s last day').optional(),
    applied: f.date('Day of bonding').optional(),
    sealant: f.text('Sealant').optional(),
    torque: f.quantity('torque', 'Torque of the fasteners').optional(),
    order: f.text('Order in which the fasteners are undone and tightened').optional(),
  });

const bond = (f: Fields) =>
  z.strictObject({
    surface: f.quantity('temperature', 'Temperature of the surface').optional(),
    air: f.quantity('temperature', 'Temperature of the air').optional(),
    humidity: f.level('Relative humidity').optional(),
    open_time: f.quantity('time', 'From spreading to closing').optional(),
    open_time_limit: f.quantity('time', 'Most that the adhesive allows').optional(),
    cure: f.quantity('time', 'Before it was loaded').optional(),
    cure_least: f.quantity('time', 'Least that the adhesive wants before it is loaded').optional(),
    coupon: f.id('Test of the coupon').optional(),
  });

/** panels*.yaml */
export const panel = (f: Fields) =>
  record(f, {
    kind: f.oneOf(PANEL_KINDS, 'Kind of panel'),
    name: f.text('As printed on its label').optional(),
    alloy: f.id('Alloy and temper, as in library/materials.yaml').optional(),
    thickness: f.quantity('length', 'Sheet thickness', 'above zero').optional(),
    outline: f.positions('Corners in order', 3),
    holes: f.outlines('Cut-outs, each by its corners').optional(),
    of: f.id('The panel that this access panel is set in').optional(),
    opening: f.twoLengths('Clear opening, as 14 in x 18 in').optional(),
    facing: f.oneOf(FACINGS, 'Way that its outside looks').optional(),
    fixing: fixing(f).meta({ description: 'How it is held, and what was used' }).optional(),
    bond: bond(f).meta({ description: 'What it was like while it was bonded' }).optional(),
    mass: f.quantity('mass', 'Where it was weighed', 'above zero').optional(),
  });

const measured = (f: Fields) =>
  z.strictObject({
    top: f.quantity('length', 'Along the top', 'above zero').optional(),
    bottom: f.quantity('length', 'Along the bottom', 'above zero').optional(),
    front: f.quantity('length', 'Along the front', 'above zero').optional(),
    rear: f.quantity('length', 'Along the rear', 'above zero').optional(),
    diagonals: f.range('length', 'Both diagonals').optional(),
    header_sag: z
      .array(
        z.strictObject({
          at: f.quantity('length', 'From the front end of the header'),
          drop: f.quantity('length', 'Below a straight line between its ends', 'any'),
        }),
      )
      .meta({ description: 'Sag of the header below a line between its ends, place by place' })
      .optional(),
  });

/** openings*.yaml */
export const opening = (f: Fields) =>
  record(f, {
    kind: f.text('slide-out, door, window …'),
    wall: f.text('left, right, front, rear or roof').optional(),
    sill: f.positions('Both ends of the sill').optional(),
    width: f.quantity('length', 'Width as it should be', 'above zero'),
    height: f.quantity('length', 'Height as it should be', 'above zero'),
    measured: measured(f).meta({ description: 'As measured: sides, diagonals and sag' }).optional(),
    header: f.id('The member over it').optional(),
    gussets: f.ids('The plates in its corners').optional(),
    travel: f.quantity('length', 'Of a slide-out: how far it goes out from the wall', 'above zero').optional(),
    driven_by: f.ids('Of a slide-out: circuits, runs and nodes that move with it or drive it').optional(),
    depth: f.quantity('length', 'Of a slide-out: how far into the coach it stands when it is in', 'above zero').optional(),
  });

const clampCheck = (f: Fields) =>
  z.strictObject({
    date: f.date('When it was checked'),
    torque: f.quantity('torque', 'As found or tightened again', 'above zero').optional(),
    by: f.text('Who checked it').optional(),
    after: f.text('Distance or time by then, as 640 mi').optional(),
  });

/** clamps*.yaml */
export const clamp = (f: Fields) =>
  record(f, {
    kind: f.text('U-bolt, plate, damper mount …'),
    at: f.position('Where it is'),
    bolt: f.text('Size and grade').optional(),
    torque: f.quantity('torque', 'As tightened', 'above zero').optional(),
    damper: f.text('Damper that it holds').optional(),
    isolator: f.yesNo('Unlike metals are kept apart here').optional(),
    joins: f.ids('Parts that it holds together').optional(),
    check_again: z
      .strictObject({ after: f.text('Distance or time, as 500 mi') })
      .meta({ description: 'When its torque is looked at next' })
      .optional(),
    checks: z.array(clampCheck(f)).meta({ description: 'Each check since it was first tightened' }).optional(),
  });
