import type { Vec3 } from '../geometry/vector.js';
import { block, count, date, id, ids, list, oneOf, plainField, position, positions, prose, quantity, text } from './fields.js';
import { readPhotoFile, readPixel } from './form/worded-fields.js';
import { kind, type RecordOf } from './kind.js';
import { statement } from './shared.js';
import type { ModelOf } from './types.js';

const seen = {
  is: id('A node, or a member, panel or opening with `end` or `corner`').namesAny(),
  end: oneOf(['low', 'high', 'from', 'to'], 'Which end of a member'),
  corner: count('Which corner of a panel or opening, clockwise from the lower front one, seen from outside'),
  at: position('Or its place'),
  px: plainField(readPixel, 'Column and row in the picture, from its upper left, as [412, 1630]', {
    type: 'array',
    items: { type: 'number' },
    minItems: 2,
    maxItems: 2,
  }).required(),
};
/** A point whose place is known, and its pixels from the upper left of the picture as it is shown upright. */
export type SeenPoint = ModelOf<typeof seen>;

const original = {
  name: text('Its name there').required(),
  sha256: text('SHA-256 of its bytes, where it was another kind of file'),
};

const camera = block(
  {
    at: position('Where the camera stood').required(),
    towards: position('The place in the middle of the picture').required(),
    angle: quantity('angle', 'Angle of view, from side to side', 'above zero').required(),
  },
  'From where it was taken, instead of `shows`',
);

/** photos/photos*.yaml */
export const photo = kind(
  'photo',
  { in: 'shell', list: 'photos' },
  {
    /** Relative to the shell's photos folder. */
    file: plainField(readPhotoFile, 'File in the photos folder', { type: 'string' }).required().notLent().called('filename'),
    of: ids('What it shows').namesAny().usual([]).called('shows', 'subject', 'subjects'),
    view: prose('From where it was taken').called('direction'),
    taken: date('When it was taken').called('datetaken'),
    caption: prose('What to see in it').called('description'),
    sha256: text('SHA-256 of the file')
      .notLent()
      .model((hash) => hash.toLowerCase()),
    original: block(original, 'The file as the camera or phone had it, where it bears another name or was HEIC').describes(),
    shows: positions('Two opposite corners of the box that it shows', 2, 2).model(
      ([from, to]) => [from, to] as unknown as readonly [Vec3, Vec3],
    ),
    camera,
    seen: list(block(seen), 'Points whose place is known, and where they lie in the picture').describes(),
    vouched: statement('Of a picture without a camera’s date: who says when it was taken, and why that is known'),
  },
  { called: { photo: 'id' }, stands: 'evidence', event: ['taken'] },
);

export type Photo = RecordOf<typeof photo>;
