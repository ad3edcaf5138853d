import { block, date, ids, list, range, text, texts } from './fields.js';
import { kind, type RecordOf } from './kind.js';
import type { ModelOf } from './types.js';

const qualification = {
  process: text('Welding process'),
  method: text('Inspection method, as VT'),
  positions: texts('Positions covered').usual([]),
  thickness: range('length', 'Least and most thickness covered'),
  groups: texts('Material groups covered, ISO/TR 15608').usual([]),
  from: date('First day').required(),
  until: date('Last day'),
};
export type Qualification = ModelOf<typeof qualification>;

/** library/people.yaml: welders and inspectors. */
export const person = kind(
  'person',
  { in: 'library', list: 'people' },
  {
    name: text('Full name').required(),
    role: text('welder, inspector …').required().asLast(),
    qualified: list(block(qualification), 'What they are qualified for, with dates').usual([]),
    signs: ids('Stages that they may sign off, and close'),
    git: texts('Addresses that they commit under').private(),
    key: text('Their public key as SSH writes it, `ssh-ed25519 AAAA…`: commits of their sign-offs are signed with it').private(),
  },
  { counted: ['person', 'people'], stands: 'kept up', asked: ['id', 'name', 'role', 'qualified', 'signs'] },
);

export type Person = RecordOf<typeof person>;
