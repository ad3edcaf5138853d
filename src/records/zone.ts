import type { Vec3 } from '../geometry/vector.js';
import { ids, pipeSize, positions, someOf, text, twoLengths, yesNo } from './fields.js';
import { kind, type RecordOf } from './kind.js';
import { MEDIA } from './names.js';

const HALF = 'format.missing-key';

/** zones*.yaml: a named cavity, an axis-aligned `box`, or a section `clear` swept `along` a line. */
export const zone = kind(
  'zone',
  { in: 'shell', list: 'zones' },
  {
    name: text('As printed in the book').usual(({ id }) => id),
    box: positions('Two opposite corners', 2, 2).model(([a, b]) => [a, b] as unknown as readonly [Vec3, Vec3]),
    along: positions('The line that the cavity follows', 2),
    /** First dimension across (horizontal), second up. */
    clear: twoLengths('Clear inside across and up, as 2 in x 3-1/2 in'),
    // The safe side: what is not said to be open is taken to be closed in.
    concealed: yesNo('Closed in for good; yes where not typed').usual(true),
    closed_by: ids('Panels that close it').names('panel').usual([]),
    carries: someOf(MEDIA, 'media', 'Media that may run in it').usual([]),
    spare: text('Spare ways left in it'),
    pull_cord: yesNo('A pull cord lies in it'),
    cord_ends: ids('Where the pull cord’s two ends are tied off: panels or nodes').names('panel', 'node'),
    conduit: pipeSize('Trade size and kind where it is a conduit, as 3/4 in EMT'),
    drains: positions('Drain holes in its floor', 1),
  },
  {
    finish(read) {
      // A conduit is about as wide as its trade size; its fill is taken from the tables.
      const inside = read.conduit && ([read.conduit.nominalMm, read.conduit.nominalMm] as const);
      return read.clearMm || !inside ? read : { ...read, clearMm: inside };
    },
    check({ id, form, source }, tell) {
      const { box, along, clear, conduit } = form;
      if (box && !along) return;
      if (box && along)
        tell('format.wrong-value', `Zone ${id} has both \`box\` and \`along\`, expected one of them`, source.place('along'), [
          id,
        ]);
      else if (!along)
        tell(HALF, `Missing key \`box\` of zone ${id}, expected \`box\`, or \`along\` with \`clear\``, source.place(), [id]);
      else if (!clear && !conduit) {
        const message = `Missing key \`clear\` of zone ${id}, expected the clear inside of the cavity, as \`clear: 2 in x 3-1/2 in\`, or \`conduit: 3/4 in EMT\``;
        tell(HALF, message, source.place('along'), [id]);
      }
    },
    structure: true,
  },
);

export type Zone = RecordOf<typeof zone>;
