import type { Vec3 } from '../geometry/vector.js';
import { block, id, list, oneOf, position, positions, quantity, text } from './fields.js';
import { kind, type RecordOf } from './kind.js';

/**
 * A tube, beam, channel, angle or bar on a line.
 *
 * The line runs through the middle of the section's bounding rectangle. At roll 0 the depth of the section stands in
 * the vertical plane of the member (towards +z), its width lies across (`width axis = depth axis × line`, so +y for a member that
 * runs rearward). For a member that stands upright, the depth points to +x. Roll turns both about the line, right-handed.
 * A bent member stands so at `from`, and its section turns with it through each bend.
 */
export interface LineMember {
  readonly kind: 'line';
  readonly section: string;
  readonly from: Vec3;
  readonly to: Vec3;
  readonly rollDeg: number;
  readonly cutLengthMm?: number;
  /** From `from` to `to`; absent where the member is straight. */
  readonly bends?: readonly MemberBend[];
}

/** A bend in a tube or bar. */
export interface MemberBend {
  /** Where the middle lines of the two straight lengths beside it would cross. */
  readonly at: Vec3;
  /** Of the middle line. */
  readonly radiusMm: number;
}

/** A plate cut to an outline. */
export interface PlateMember {
  readonly kind: 'plate';
  readonly thicknessMm: number;
  /** Corners on the plate's middle plane. */
  readonly outline: readonly Vec3[];
}

export const MEMBER_CLASSES = ['primary', 'secondary'] as const;
const MEMBER_ROLES = ['truss', 'post', 'gusset'] as const;
/** What it does in the shell, where a rule asks for it. */
export type MemberRole = (typeof MEMBER_ROLES)[number];
/** Primary: the shell stands on it. */
export type MemberClass = (typeof MEMBER_CLASSES)[number];

const plate = block(
  {
    thickness: quantity('length', 'Plate thickness', 'above zero').required(),
    outline: positions('Corners in order, on the middle plane', 3).required(),
  },
  'Where it is a plate: its thickness and corners',
);

const bend = block({
  at: position('Where the middle lines of the straight lengths beside it would cross').required(),
  radius: quantity('length', 'Radius of the middle line in the bend', 'above zero').required(),
});

/** members*.yaml: `section`, `from` and `to` for a tube or beam, `plate` for a plate. */
export const member = kind(
  'member',
  { in: 'shell', list: 'members' },
  {
    part: text('What it is, as on the cut list')
      .usual(({ id: own }) => own)
      .called('description', 'name')
      .traced('part'),
    alloy: id('Alloy and temper, as in library/materials.yaml')
      .required()
      .names('material')
      .called('material', 'temper')
      .asLast(),
    heat: text('Heat or lot number').ofOne().notLent().called('heatno', 'lot').asLast().traced('heat'),
    offcut_of: id('The member whose bar or sheet this was cut from: it has the same heat').names('member').ofOne(),
    role: oneOf(MEMBER_ROLES, 'What it does, where rules ask for it: spacing of trusses and posts, gussets of openings')
      .describes()
      .asLast(),
    class: oneOf(MEMBER_CLASSES, 'primary (if not typed): the shell rests on it; secondary: a bracket, a rail to screw to').as(
      'memberClass',
    ),
    section: id('Section, as in library/sections.yaml')
      .names('section')
      .called('profile', 'shape', 'extrusion', 'size')
      .asLast()
      .traced('part'),
    from: position('One end of its middle line').notLent().called('start'),
    to: position('The other end').notLent().called('end'),
    bends: list(bend, 'Where it is bent: each bend in order from `from` to `to`').notLent(),
    roll: quantity('angle', 'Turn about the line; 0 has the depth upright', 'any').usual(0).called('rotation'),
    cut_length: quantity('length', 'Length as cut', 'above zero').ofOne().notLent().called('length', 'cut'),
    plate: plate.notLent(),
  },
  {
    finish({ section, from, to, rollDeg, cutLengthMm, bends, plate: cut, ...rest }) {
      if (cut) return { ...rest, shape: { kind: 'plate', ...cut } as LineMember | PlateMember };
      if (section === undefined || !from || !to) return undefined;
      const bent = bends && bends.length > 0 ? { bends } : {};
      return { ...rest, shape: { kind: 'line', section, from, to, rollDeg, cutLengthMm, ...bent } as LineMember | PlateMember };
    },
    check({ id: own, form, source }, tell) {
      const { plate: cut, section, from, to, bends } = form;
      if (cut && (section ?? from ?? to ?? bends) !== undefined) {
        const other = section !== undefined ? 'section' : (from ?? to) !== undefined ? 'from' : 'bends';
        const message = `Member ${own} has both \`plate\` and \`${other}\`, expected one: \`plate\` for a plate, \`section\`, \`from\` and \`to\` for a tube or beam`;
        tell('format.wrong-value', message, source.place('plate'), [own]);
      } else if (!cut) {
        const missing = [section === undefined && 'section', !from && 'from', !to && 'to'].filter((key) => key !== false);
        if (missing.length === 0) return;
        const keys = missing.map((key) => `\`${key}\``).join(' and ');
        const message = `Missing key ${keys} of member ${own}, expected \`section\`, \`from\` and \`to\` for a tube or beam, or \`plate\` for a plate`;
        tell('format.missing-key', message, source.place(), [own]);
      }
    },
    never: {
      mass: 'it is computed from section, length and the alloy’s density',
      length: 'type the ends `from` and `to`, and `cut_length` as measured',
    },
    structure: true,
    asked: ['id', 'stage', 'part', 'alloy', 'section', 'from', 'to', 'cut_length', 'heat'],
    askedOtherwise: ['id', 'stage', 'part', 'alloy', 'plate.thickness', 'plate.outline', 'heat'],
    needed: ['section', 'from', 'to', 'plate.thickness', 'plate.outline'],
    called: {
      x1: 'from.x',
      y1: 'from.y',
      z1: 'from.z',
      x2: 'to.x',
      y2: 'to.y',
      z2: 'to.z',
    },
    pictured: 5,
    repeated: { what: 'ids and heats', least: 10, share: 0.5, same: ['id'], readings: ['heat'], leastReadings: 1, word: 'heat' },
  },
);

export type Member = RecordOf<typeof member>;
