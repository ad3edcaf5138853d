import type { Weld } from '../../model/structure.js';
import { type Book, type ChapterMaker, personName, stageName } from '../book.js';
import { ref, table } from '../table.js';

/** Schedule, procedures, inspection; names in the shop's edition only. */
export const welds: ChapterMaker = (book) => {
  const { weldTotals, joints } = book.assessment.figures;
  const { show } = book;
  return {
    key: 'welds',
    title: 'Welds',
    template: 'welds',
    data: {
      any: book.assessment.model.shell.welds.length > 0,
      facts: [
        { name: 'Welds recorded', value: `${weldTotals.count} records, ${weldTotals.jointsCount} joints` },
        { name: 'Length', value: show.length(weldTotals.lengthMm) },
        { name: 'Deposited filler', value: show.mass(weldTotals.depositedKg) },
        {
          name: 'Joints found from the members’ places',
          value: `${joints.found}, of which ${joints.recorded} have a weld on record`,
        },
      ],
      processes: processTable(book),
      missing: joints.missing.map(([a, b]) => ({ a: ref(a), b: ref(b) })),
      schedule: schedule(book),
      procedures: procedureTable(book),
      people: book.edition === 'shop' ? peopleTable(book) : undefined,
    },
  };
};

/** Accepted, rejected or never looked at: the last inspection decides, and each is told. */
function inspectionWords(book: Book, weld: Weld): string {
  if (weld.inspections.length === 0) return 'not inspected: not verified';
  return weld.inspections
    .map((one) => {
      const why = [one.reason, one.repair === undefined ? undefined : `repair ${one.repair}`].filter(Boolean).join(', ');
      const who = book.edition === 'shop' ? ` by ${one.by}` : '';
      return `${one.method} ${one.result}${why ? ` (${why})` : ''}${who}, ${book.show.date(one.date)}`;
    })
    .join('; ');
}

function schedule(book: Book) {
  const forShop = book.edition === 'shop';
  return table<Weld>(book.show, {
    rows: book.assessment.model.shell.welds,
    home: (weld) => weld.id,
    look: 'tight',
    columns: (c) => [
      c.id(
        'Weld',
        (weld) => weld.id,
        (weld) => stageName(book, weld.stage),
      ),
      c.refs(
        'Joins',
        (weld) => [...new Set(weld.joins.flat())],
        (weld) => (weld.joins.length > 1 ? `${weld.joins.length} like joints` : undefined),
      ),
      c.text(
        'Type',
        (weld) => weld.type,
        (weld) =>
          [weld.allRound ? 'all round' : `${weld.sides} side${weld.sides === 'both' ? 's' : ''}`, weld.position]
            .filter(Boolean)
            .join(', '),
      ),
      c.thickness('Size', (weld) => weld.sizeMm),
      c.length('Length', (weld) => weld.lengthMm),
      c.text(
        'Process',
        (weld) => [weld.process, weld.filler].filter(Boolean).join(', '),
        (weld) => weld.procedure,
      ),
      c.text(
        'Made',
        (weld) => book.show.date(weld.date),
        (weld) => (forShop ? weld.welder : undefined),
      ),
      c.text(
        'Inspection',
        (weld) => inspectionWords(book, weld),
        (weld) => weld.note,
      ),
    ],
    empty: 'No welds are recorded.',
  });
}

function processTable(book: Book) {
  return table(book.show, {
    rows: Object.entries(book.assessment.figures.weldTotals.byProcess),
    columns: (c) => [
      c.id('Process', ([process]) => process),
      c.count('Records', ([, sum]) => sum.count),
      c.length('Length', ([, sum]) => sum.lengthMm),
      c.count('Rejected', ([, sum]) => sum.rejects),
      c.count('Repaired', ([, sum]) => sum.repairs),
    ],
    empty: 'No process has any weld.',
  });
}

function procedureTable(book: Book) {
  const used = new Set(book.assessment.model.shell.welds.map((weld) => weld.procedure));
  return table(book.show, {
    rows: [...book.assessment.model.library.procedures.values()].filter((one) => used.has(one.id)),
    columns: (c) => [
      c.id(
        'Procedure',
        (one) => one.id,
        (one) => one.edition,
      ),
      c.text('Process', (one) => one.process),
      c.text('Types', (one) => one.types.join(', ')),
      c.text('Base', (one) => one.base.join(', ')),
      c.text('Thickness', (one) => one.thicknessMm?.map(book.show.thickness).join(' to ')),
      c.text('Filler', (one) => one.filler.join(', ')),
      c.text('Positions', (one) => one.positions.join(', ')),
    ],
    empty: 'No weld names a procedure of the library.',
  });
}

function peopleTable(book: Book) {
  const { shell } = book.assessment.model;
  const named = new Set(shell.welds.flatMap((weld) => [weld.welder, ...weld.inspections.map((one) => one.by)]));
  return table(book.show, {
    rows: [...book.assessment.model.library.people.values()].filter((person) => named.has(person.id)),
    columns: (c) => [
      c.text('Name', (person) => personName(book, person.id)),
      c.text('Role', (person) => person.role),
      c.text('Qualified for', (person) =>
        person.qualified
          .map((one) =>
            `${one.process ?? one.method ?? ''} ${one.positions.join(' ')} ${book.show.date(one.from)} to ${one.until ? book.show.date(one.until) : 'open'}`.replace(
              / +/gu,
              ' ',
            ),
          )
          .join('; '),
      ),
    ],
    empty: 'No weld names a person of the register.',
  });
}
