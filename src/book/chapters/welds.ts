import type { InspectionShare } from '../../compute/welding/inspection.js';
import { anchor } from '../../model/anchor.js';
import { type Book, type ChapterMaker, personName, stageName } from '../book.js';
import type { WeldSheet } from '../drawings.js';
import { ref, table } from '../table.js';
import { repairTable, scheduleTable, symbolAnchor } from './weld-schedule.js';

/** Symbols, procedures, the map and its schedule by stage, inspection; names in the shop's edition only. */
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
      symbols: symbolRows(book),
      standard: book.assessment.model.shop.weldSymbols === 'iso' ? 'ISO 2553, system A' : 'AWS A2.4',
      inspection: inspectionTable(book),
      repairs: repairTable(book),
      procedures: procedureTable(book),
      people: book.edition === 'shop' ? peopleTable(book) : undefined,
      ...mapData(book),
    },
  };
};

/** Each symbol with what it means in words, and what it was welded with. */
function symbolRows(book: Book) {
  const byId = new Map(book.assessment.model.shell.welds.map((weld) => [weld.id, weld]));
  return book.draw.weldSymbols(book.assessment).map((one) => {
    const weld = byId.get(one.welds[0] ?? '');
    const made = [weld?.process, weld?.procedure, weld?.filler].filter(Boolean).join(', ');
    return { ...one, to: symbolAnchor(one.key), made };
  });
}

const sheetAnchor = (sheet: WeldSheet): string => anchor(`weld map ${sheet.sheet}`);

/** The map's sheets by stage, each stage with its schedule; then the welds that no sheet can show. */
function mapData(book: Book) {
  const sheets = book.draw.weldMap(book.assessment, book.availableSize('landscape', 16));
  const { welds } = book.assessment.model.shell;
  const homes = new Map<string, WeldSheet>();
  for (const sheet of sheets) for (const id of sheet.welds) if (!homes.has(id)) homes.set(id, sheet);
  const stages = [...new Set(sheets.map(({ stage }) => stage))].map((stage, index) => {
    const own = sheets.filter((sheet) => sheet.stage === stage);
    const name = stage === 'none' ? 'no stage recorded' : (stageName(book, stage) ?? stage);
    return {
      to: index === 0 ? 'h-weld-map' : anchor(`weld map of ${stage}`),
      schedule: index === 0 ? 'h-weld-schedule' : anchor(`weld schedule of ${stage}`),
      name,
      figures: own.map((sheet) => ({ ...sheet, to: sheetAnchor(sheet), page: scheduleAnchor(sheet) })),
      table: scheduleTable(
        book,
        own.flatMap((sheet) =>
          welds
            .filter((weld) => homes.get(weld.id) === sheet)
            .map((weld) => ({
              weld,
              sheet: { title: sheet.title, at: scheduleAnchor(sheet), to: sheetAnchor(sheet) },
              also: alsoOn(sheet, homes),
            })),
        ),
      ),
    };
  });
  const unplaced = welds.filter((weld) => !homes.has(weld.id));
  return {
    stages,
    unplaced:
      unplaced.length > 0
        ? scheduleTable(
            book,
            unplaced.map((weld) => ({ weld, also: [] })),
          )
        : undefined,
    unplacedTo: stages.length > 0 ? 'h-weld-unplaced' : 'h-weld-schedule',
  };
}

const scheduleAnchor = (sheet: WeldSheet): string => anchor(`weld schedule of sheet ${sheet.sheet}`);

/** Welds with like joints here whose line is under an earlier sheet. */
const alsoOn = (sheet: WeldSheet, homes: ReadonlyMap<string, WeldSheet>): readonly string[] =>
  sheet.welds.filter((id) => homes.get(id) !== sheet);

function inspectionTable(book: Book) {
  return table<InspectionShare>(book.show, {
    look: 'dense',
    rows: book.assessment.figures.inspection,
    columns: (c) => [
      c.text('Joints', (one) => one.jointClass),
      c.text('Method', (one) => one.method),
      c.count('Of this class', (one) => one.joints),
      c.count('Accepted', (one) => one.accepted),
      c.text('Share', (one) => book.show.percent(one.share)),
      c.text('Asked for', (one) => (one.required === undefined ? 'no share set' : `${book.show.percent(one.required)} at least`)),
      c.verdict((one) => (one.required === undefined || one.share >= one.required ? 'passed' : 'short')),
    ],
    empty: 'No joint is inspected.',
  });
}

function processTable(book: Book) {
  return table(book.show, {
    look: 'dense',
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
    look: 'roll',
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
