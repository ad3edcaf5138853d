import type { Kind } from '../schema/kinds.js';
import type { Checked, RecordReader } from './records.js';
import type { Source } from './source.js';

/** A record whose form is right, from a file or from elsewhere. */
type Formed<K extends Kind> = Pick<Checked<K>, 'id' | 'form'> & { readonly source: Source };
type Teller = Pick<RecordReader, 'tell'>;

/** A record that may take one of two forms must take one of them whole. */
const HALF = 'format.missing-key';

export function reportRoughMembers(records: readonly Formed<'member'>[], reader: Teller): void {
  for (const { id, form, source } of records) {
    const { plate, section, from, to } = form;
    if (plate && (section ?? from ?? to) !== undefined) {
      const message = `Member ${id} has both \`plate\` and \`${section !== undefined ? 'section' : 'from'}\`, expected one: \`plate\` for a plate, \`section\`, \`from\` and \`to\` for a tube or beam`;
      reader.tell('format.wrong-value', message, source.place('plate'), [id]);
    } else if (!plate) {
      const missing = [section === undefined && 'section', !from && 'from', !to && 'to'].filter((key) => key !== false);
      if (missing.length === 0) continue;
      const keys = missing.map((key) => `\`${key}\``).join(' and ');
      reader.tell(
        HALF,
        `Missing key ${keys} of member ${id}, expected \`section\`, \`from\` and \`to\` for a tube or beam, or \`plate\` for a plate`,
        source.place(),
        [id],
      );
    }
  }
}

export function reportRoughZones(records: readonly Formed<'zone'>[], reader: Teller): void {
  for (const { id, form, source } of records) {
    const { box, along, clear, conduit } = form;
    if (box && !along) continue;
    if (box && along) {
      reader.tell(
        'format.wrong-value',
        `Zone ${id} has both \`box\` and \`along\`, expected one of them`,
        source.place('along'),
        [id],
      );
    } else if (!along)
      reader.tell(HALF, `Missing key \`box\` of zone ${id}, expected \`box\`, or \`along\` with \`clear\``, source.place(), [id]);
    else if (!clear && !conduit)
      reader.tell(
        HALF,
        `Missing key \`clear\` of zone ${id}, expected the clear inside of the cavity, as \`clear: 2 in x 3-1/2 in\`, or \`conduit: 3/4 in EMT\``,
        source.place('along'),
        [id],
      );
  }
}
