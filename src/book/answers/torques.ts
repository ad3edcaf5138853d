import type { Book } from '../book.js';
import { table } from '../table.js';

interface Tightened {
  readonly kind: string;
  readonly id: string;
  readonly what: string;
  readonly torqueNm?: number;
  readonly again?: string;
}

/** Every torque on record, by what is tightened. */
export function torques(book: Book) {
  const { shell } = book.assessment.model;
  const rows: readonly Tightened[] = [
    ...shell.clamps.map((clamp) => ({
      kind: 'Clamps, U-bolts and dampers',
      id: clamp.id,
      what: [clamp.clampKind, clamp.bolt].filter(Boolean).join(', '),
      ...(clamp.torqueNm === undefined ? {} : { torqueNm: clamp.torqueNm }),
      ...(clamp.checkAgain ? { again: clamp.checkAgain } : {}),
    })),
    ...shell.nodes.flatMap((node) =>
      node.torqueNm === undefined
        ? []
        : [{ kind: 'Terminals and fittings', id: node.id, what: node.name ?? node.nodeKind, torqueNm: node.torqueNm }],
    ),
    ...shell.panels.flatMap(({ id, name, panelKind, fixing }) =>
      fixing?.torqueNm === undefined
        ? []
        : [{ kind: 'Panels', id, what: `${name ?? `${panelKind} panel`}, ${fixing.method}`, torqueNm: fixing.torqueNm }],
    ),
  ];
  return table<Tightened>(book.show, {
    look: 'dense tight',
    rows,
    group: (one) => one.kind,
    columns: (c) => [
      c.refs('Id', (one) => [one.id]),
      c.text('What', (one) => one.what),
      c.torque('Torque', (one) => one.torqueNm),
      c.text('Check again', (one) => one.again),
      c.page((one) => one.id),
    ],
    empty: 'No torque is recorded: take each from the paper of its maker.',
  });
}
