import { range, text, texts } from './fields.js';
import { kind, type RecordOf } from './kind.js';

/** library/procedures.yaml: welding procedure specifications. */
export const procedure = kind(
  'procedure',
  { in: 'library', list: 'procedures' },
  {
    process: text('GMAW, GTAW or the ISO 4063 number').required().asLast(),
    types: texts('Weld types that it covers').required(),
    base: texts('Alloys that it covers').required().leansOn('material'),
    thickness: range('length', 'Least and most thickness that it covers').asLast(),
    filler: texts('Fillers that it allows').required().asLast(),
    positions: texts('Positions that it covers, as 1F').required(),
    edition: text('Code and edition that it was qualified to'),
  },
);

export type Procedure = RecordOf<typeof procedure>;
