import { ids, listed, oneOf, position, quantityOfAnyKind, text, texts } from './fields.js';
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
    lifts: oneOf(['whole vehicle', 'shell'], 'What hangs on it: the whole vehicle, or the shell taken off its chassis'),
    unbolt_first: texts('What is unbolted, disconnected or taken out before it is lifted, jacked or towed'),
  },
  { words: 'a declared value', counted: ['declared rating', 'declared ratings'] },
);

export type Declared = RecordOf<typeof declared>;
