import type { Book } from '../book.js';
import { decisionsOf } from '../decisions.js';
import { insulatorWords } from '../passages.js';
import { table } from '../table.js';

interface Tightened {
  readonly kind: string;
  readonly what: string;
  readonly torqueNm?: number;
  readonly again?: string;
  readonly ids: readonly string[];
}

/** Every torque on record, by what is tightened; like things with the same torque stand in one line. */
export function torquesAnswer(book: Book) {
  const { shell } = book.assessment.model;
  const all: readonly Tightened[] = [
    ...shell.clamps.map((clamp) => ({
      kind: 'Clamps, U-bolts and dampers',
      what: [clamp.clampKind, clamp.bolt, insulatorWords(clamp)].filter(Boolean).join(', '),
      ids: [clamp.id],
      ...(clamp.torqueNm === undefined ? {} : { torqueNm: clamp.torqueNm }),
      ...(clamp.checkAgain ? { again: clamp.checkAgain } : {}),
    })),
    ...shell.nodes.flatMap((node) => {
      const { id, name, nodeKind, torqueNm } = node;
      if (torqueNm === undefined) return [];
      const what = [general(name ?? nodeKind), insulatorWords(node)].filter(Boolean).join(', ');
      return [{ kind: 'Terminals and fittings', what, torqueNm, ids: [id] }];
    }),
    ...shell.panels.flatMap(({ id, panelKind, fixing }) =>
      fixing?.torqueNm === undefined
        ? []
        : [{ kind: 'Panels', what: `${panelKind} panel, ${fixing.method}`, torqueNm: fixing.torqueNm, ids: [id] }],
    ),
  ];
  return table<Tightened>(book.show, {
    look: 'dense tight',
    rows: together(all),
    group: (one) => one.kind,
    marks: ({ ids }) => ids.flatMap((id) => decisionsOf(book, id)),
    columns: (c) => [
      c.text('What', (one) => one.what),
      c.text('Torque', (one) => (one.torqueNm === undefined ? undefined : book.show.torque(one.torqueNm))),
      c.text('Check again', (one) => one.again),
      c.refs('Which', (one) => one.ids),
    ],
    empty: 'No torque is recorded: take each from the paper of its maker.',
  });
}

/** `fuse position 12` and `fuse position 3` are tightened alike. */
const general = (name: string): string => name.replace(/[,\s]*(?:(?:bay|station|position)\s*)?\d+\b.*$/u, '') || name;

function together(all: readonly Tightened[]): readonly Tightened[] {
  const like = new Map<string, Tightened>();
  for (const one of all) {
    const key = JSON.stringify([one.kind, one.what, one.torqueNm, one.again]);
    const before = like.get(key);
    like.set(key, before ? { ...before, ids: [...before.ids, ...one.ids] } : one);
  }
  return [...like.values()];
}
