import { date, id, text } from './fields.js';
import { kind, type RecordOf } from './kind.js';

/** library/rules/*.yaml: a rule whose figure differs by state, country or edition, kept as data with its citation. */
export const packedRule = kind(
  'rule',
  { in: 'library', list: 'rules' },
  {
    id: id('Only where two entries of a pack are for the same rule')
      .usual(({ read }) => String(read.rule))
      .notLent()
      .called('no', 'number', 'mark', 'tag', 'item', 'piece', 'pieceno'),
    rule: text('Name of the rule, as weight.relabel').required(),
    limit: text('The figure, in words'),
    citation: text('Where it is written'),
    edition: text('Edition or year that was read'),
    verified: date('When somebody last compared it with the text'),
  },
  {
    finish: (read) => ({ ...read, pack: packOf(read.source.file) }),
    stands: 'kept up',
    toldBy: ['rule'],
  },
);

/** `us-federal` of library/rules/us-federal.yaml */
const packOf = (file: string): string => file.slice(file.lastIndexOf('/') + 1).replace(/\.yaml$/u, '');

export type PackedRule = RecordOf<typeof packedRule>;
