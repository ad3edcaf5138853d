import { torqueSpecified } from '../../query/topics/torque-uses.js';
import { spelt } from '../../words/index.js';
import type { Book } from '../book.js';
import { decisionsOf } from '../decisions.js';
import { spansColumn } from '../id-spans.js';
import { insulatorWords } from '../passages.js';
import { readerFor } from '../sentences.js';
import { type Ref, table } from '../table.js';

interface Tightened {
  readonly purpose: string;
  readonly what: string;
  readonly ids: readonly string[];
  /** What the record gives as the torque of the thing itself. */
  readonly givenNm?: number;
  /** What it was tightened to, which is no specification. */
  readonly tightenedNm?: readonly number[];
  readonly again?: string;
  /** What to do where no torque stands. */
  readonly otherwise?: string;
}

const CHASSIS_PAPERS = 'not recorded: by the chassis maker’s manual';
const ASK_ENGINEER = 'not recorded: ask who declared it';
const BY_MAKER = 'not recorded: by its maker’s paper';

/** Torque by what it is for, each with the record that it stands in; where the record is silent it says so. */
export function torquesAnswer(book: Book) {
  const { show } = book;
  return table<Tightened>(show, {
    look: 'dense tight',
    rows: tightened(book),
    group: (one) => one.purpose,
    marks: (one) => marksOf(book, one),
    columns: (c) => [
      c.text('What', (one) => one.what),
      c.text('Specified', (one) => specified(book, one)),
      c.text('Tolerance', (one) => specifiedBy(book, one)?.note ?? 'not recorded'),
      c.text('Tightened to', (one) => rangeWords(book, one.tightenedNm)),
      c.text('Again', (one) => one.again),
      spansColumn('Which', (one) => one.ids),
      c.refs('Source', (one) => [sourceOf(book, one)]),
    ],
    empty: 'No torque is recorded: take each from the paper of its maker.',
  });
}

/** What was decided about things with a torque, each once. */
function marksOf(book: Book, { ids, givenNm, tightenedNm }: Tightened): readonly Ref[] {
  if (givenNm === undefined && tightenedNm === undefined) return [];
  return [...new Map(ids.flatMap((id) => decisionsOf(book, id)).map((mark) => [mark.text, mark])).values()];
}

/** The record that the torque stands in: the test that specifies it, else that of the first of these things. */
const sourceOf = (book: Book, one: Tightened): string | undefined =>
  specifiedBy(book, one)?.test ?? (one.givenNm === undefined ? undefined : one.ids[0]);

const specifiedBy = (book: Book, { ids }: Tightened) =>
  ids.length === 0 ? undefined : torqueSpecified(book.assessment.model.shell, ids);

function specified(book: Book, one: Tightened): string {
  const test = specifiedBy(book, one);
  if (test) return `at least ${book.show.torque(test.leastNm)}`;
  return one.givenNm === undefined ? (one.otherwise ?? 'not recorded') : book.show.torque(one.givenNm);
}

function rangeWords(book: Book, values: readonly number[] = []): string | undefined {
  if (values.length === 0) return undefined;
  const [least, most] = [Math.min(...values), Math.max(...values)].map((nm) => book.show.torque(nm));
  return least === most ? least : `${least} to ${most}`;
}

function tightened(book: Book): readonly Tightened[] {
  const { shell } = book.assessment.model;
  return [
    ...together(
      shell.clamps.map(({ id, clampKind, bolt, torqueNm, checkAgain, ...clamp }) => ({
        purpose: 'Shell to frame: U-bolts, clamps and dampers',
        what: [clampKind, bolt, insulatorWords(clamp)].filter(Boolean).join(', '),
        ids: [id],
        ...(torqueNm === undefined ? {} : { tightenedNm: [torqueNm] }),
        ...(checkAgain ? { again: checkAgain } : {}),
      })),
    ),
    ...(shell.chassis.axles.length === 0
      ? []
      : [
          {
            purpose: 'Wheel nuts',
            what: `wheels of the axles ${shell.chassis.axles.map(({ id }) => id).join(', ')}`,
            ids: [],
            otherwise: CHASSIS_PAPERS,
          },
        ]),
    ...together(panelScrews(book)),
    ...together(terminals(book)),
    ...shell.declared
      .filter(({ declaredKind }) => ['mounting', 'wall load'].includes(declaredKind))
      .map((one) => ({
        purpose: 'Mounting bolts: racks, presses and what else hangs on the shell',
        what: one.note ?? one.declaredKind,
        ids: one.of,
        otherwise: `${ASK_ENGINEER} (${one.id})`,
      })),
    ...(shell.seats.length === 0
      ? []
      : [
          {
            purpose: 'Seats and belts',
            what: 'seat bolts and belt anchors',
            ids: shell.seats.map(({ id }) => id),
            otherwise: BY_MAKER,
          },
        ]),
  ];
}

const panelScrews = (book: Book): readonly Tightened[] =>
  book.assessment.model.shell.panels.flatMap(({ id, panelKind, fixing }) =>
    fixing === undefined || (fixing.torqueNm === undefined && !['screws', 'bolts'].includes(fixing.method))
      ? []
      : [
          {
            purpose: 'Panels: what holds them on',
            what: [`${panelKind} panel`, fixing.method, fixing.driver && `${fixing.driver} driver`].filter(Boolean).join(', '),
            ids: [id],
            ...(fixing.torqueNm === undefined ? {} : { givenNm: fixing.torqueNm }),
          },
        ],
  );

/** Terminals with a torque, by what they do; a battery’s posts also where none stands. */
const terminals = (book: Book): readonly Tightened[] =>
  book.assessment.model.shell.nodes.flatMap((node) =>
    node.torqueNm === undefined && node.role !== 'battery'
      ? []
      : [
          {
            purpose: spelt(readerFor(book), 'Electrical: terminals, fuses, breakers and ground studs'),
            what: [node.role === 'battery' ? 'posts of a battery' : (node.role ?? node.nodeKind), insulatorWords(node)]
              .filter(Boolean)
              .join(', '),
            ids: [node.id],
            ...(node.torqueNm === undefined ? { otherwise: BY_MAKER } : { givenNm: node.torqueNm }),
          },
        ],
  );

/** Like things with the same torque stand in one line. */
function together(all: readonly Tightened[]): readonly Tightened[] {
  const like = new Map<string, Tightened>();
  for (const one of all) {
    const key = JSON.stringify([one.purpose, one.what, one.givenNm, one.again, one.tightenedNm === undefined]);
    const before = like.get(key);
    const tightenedNm = [...(before?.tightenedNm ?? []), ...(one.tightenedNm ?? [])];
    like.set(key, {
      ...(before ?? one),
      ids: [...(before?.ids ?? []), ...one.ids],
      ...(tightenedNm.length > 0 ? { tightenedNm } : {}),
    });
  }
  return [...like.values()];
}
