import { ids, listed, position, quantityOfAnyKind, text } from './fields.js';
import { kind, type RecordOf } from './kind.js';

/** declared*.yaml: printed with its author, or the book says "not declared". */
export const declared = kind(
  'declared',
  { in: 'shell', list: 'declared' },
  {
    kind: listed('declared', 'What it is declared for').required().as('declaredKind').asLast(),
    at: position('Where').notLent(),
    rating: quantityOfAnyKind('The declared value'),
    by: text('The engineer’s name and number').required().notLent().person().leansOn('person').asLast(),
    document: text('Where it is written').traced('certificate'),
    of: ids('The records that it is declared for').namesAny().usual([]),
  },
  { words: 'a declared value', counted: ['declared rating', 'declared ratings'] },
);

export type Declared = RecordOf<typeof declared>;
