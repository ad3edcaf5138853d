import type { HeatFigure } from '../../compute/structure/materials.js';
import type { SectionProperties } from '../../compute/takeoff/types.js';
import { anchor } from '../../model/anchor.js';
import type { Member, Section } from '../../records/index.js';
import { type Book, type ChapterMaker, stageName } from '../book.js';
import { decisionsOf } from '../decisions.js';
import type { FrameFigure } from '../drawings.js';
import { insulatorWords } from '../passages.js';
import type { FigureStyle } from '../show.js';
import { type Column, ROLL_MM, table } from '../table.js';
import { placeColumn } from '../where.js';

/** Frames and member schedules by stage, sections with their properties, alloys, heats with their papers, clamps. */
export const structure: ChapterMaker = (book) => {
  const { shell } = book.assessment.model;
  const stages = stageSections(book);
  return {
    key: 'structure',
    title: 'Structure',
    template: 'structure',
    data: {
      overview: overviewTable(book, stages),
      stages,
      sections: sectionCards(book),
      materials: materialTable(book),
      traced: tracedWords(book),
      heats: heatTable(book),
      clamps: clampTable(book),
      count: shell.members.length,
      total: book.show.mass(massOf(book, shell.members)),
    },
  };
};

const massOf = (book: Book, members: readonly Member[]): number => {
  const kg = new Map(book.assessment.figures.takeOff.members.map((one) => [one.id, one.massKg]));
  return members.reduce((sum, member) => sum + (kg.get(member.id) ?? 0), 0);
};

interface StageSection {
  /** Anchor of its heading. */
  readonly to: string;
  readonly name: string;
  readonly members: readonly Member[];
  readonly massKg: number;
  readonly pictorial?: FrameFigure;
  readonly figures: readonly FrameFigure[];
  readonly table: object;
}

/** Each stage in build order, with its drawings and its members; what names no known stage comes last. */
function stageSections(book: Book): readonly StageSection[] {
  const drawings = book.draw.frames(book.assessment, book.availableSize('landscape', 16));
  const stages = [...new Set(drawings.map(({ stage }) => stage))];
  return stages.map((stage) => {
    const members = book.assessment.model.shell.members.filter((member) => (member.stage ?? 'none') === stage);
    const own = drawings.filter((one) => one.stage === stage);
    const pictorial = own.find((one) => one.pictorial);
    return {
      to: anchor(`stage ${stage}`),
      name: stage === 'none' ? 'No stage recorded' : (stageName(book, stage) ?? stage),
      members,
      massKg: massOf(book, members),
      ...(pictorial ? { pictorial } : {}),
      figures: own.filter((one) => !one.pictorial),
      table: memberTable(book, members),
    };
  });
}

function overviewTable(book: Book, stages: readonly StageSection[]) {
  return table(book.show, {
    rows: stages,
    columns: (c) => [
      c.text('Stage', (stage) => stage.name),
      c.count('Members', (stage) => stage.members.length),
      c.mass('Mass', (stage) => stage.massKg),
      { head: 'Page', kind: 'page-no', cell: (stage) => ({ page: stage.to }) },
    ],
    empty: 'No members are recorded.',
  });
}

function memberTable(book: Book, members: readonly Member[]) {
  const figures = new Map(book.assessment.figures.takeOff.members.map((one) => [one.id, one]));
  const plate = (member: Member) =>
    member.shape.kind === 'plate' ? `plate ${book.show.thickness(member.shape.thicknessMm)}` : undefined;
  return table(book.show, {
    look: 'dense roll',
    widthMm: ROLL_MM,
    rows: members,
    home: (member) => member.id,
    marks: (member) => decisionsOf(book, member.id),
    columns: (c) => [
      c.id('Member', (member) => member.id),
      c.text(
        'Part',
        (member) => member.part,
        (member) =>
          [
            member.memberClass === 'secondary' && 'secondary',
            bendWords(book, member),
            member.offcutOf && `off-cut of ${member.offcutOf}`,
            member.note,
          ]
            .filter(Boolean)
            .join(', ') || undefined,
      ),
      c.text('Section', (member) => (member.shape.kind === 'line' ? member.shape.section : plate(member))),
      c.text('Alloy', (member) => member.alloy),
      c.id('Heat', (member) => member.heat),
      c.length('Length', (member) => (member.shape.kind === 'line' ? figures.get(member.id)?.lengthMm : undefined)),
      c.smallMass('Mass', (member) => figures.get(member.id)?.massKg),
    ],
    empty: 'No members are recorded.',
  });
}

/** `2 bends, radius 4 in (102 mm) to the middle line`. */
function bendWords(book: Book, { shape }: Member): string | undefined {
  const bends = shape.kind === 'line' ? (shape.bends ?? []) : [];
  if (bends.length === 0) return undefined;
  const radii = [...new Set(bends.map(({ radiusMm }) => book.show.length(radiusMm)))];
  return `${bends.length === 1 ? '1 bend' : `${bends.length} bends`}, radius ${radii.join(', ')} to the middle line`;
}

function usedSections(book: Book): readonly Section[] {
  const { library, shell } = book.assessment.model;
  const used = new Set(shell.members.flatMap((one) => (one.shape.kind === 'line' ? [one.shape.section] : [])));
  return [...library.sections.values()].filter((section) => used.has(section.id));
}

function sectionCards(book: Book) {
  const lengthsMm = new Map(book.assessment.figures.takeOff.members.map((one) => [one.id, one.lengthMm]));
  return usedSections(book).map((section) => sectionCard(book, section, lengthsMm));
}

function sectionCard(book: Book, section: Section, lengthsMm: ReadonlyMap<string, number | undefined>) {
  const made = book.assessment.model.shell.members.filter(({ shape }) => shape.kind === 'line' && shape.section === section.id);
  const lengthMm = made.reduce((sum, { id }) => sum + (lengthsMm.get(id) ?? 0), 0);
  const properties = book.assessment.figures.takeOff.sections.filter((one) => one.id === section.id);
  return {
    id: section.id,
    to: anchor(`section ${section.id}`),
    shape: section.dimensions.shape,
    use: `${made.length} ${made.length === 1 ? 'member' : 'members'}, ${book.show.length(lengthMm)} in all`,
    figure: book.draw.section(section, { widthMm: 62, heightMm: 46 }, book.show.system),
    table: table(book.show, {
      look: 'tight',
      widthMm: 108,
      rows: properties.flatMap((one) => propertyRows(book, one)),
      columns: (c) => [
        c.text('Property', (row) => row.name),
        ...book.show.ways.sectionArea.map((_, at): Column<PropertyRow> => {
          return { head: 'Value', kind: 'number', cell: (row) => valueCell(row, at) };
        }),
      ],
      empty: 'No properties could be computed.',
    }),
  };
}

interface PropertyRow {
  readonly name: string;
  readonly ways: readonly FigureStyle[];
  readonly value: number;
}

function valueCell({ ways, value }: PropertyRow, at: number) {
  const way = ways[at];
  return { text: way ? `${way.write(value)} ${way.unit}` : '–' };
}

function propertyRows(book: Book, one: SectionProperties): readonly PropertyRow[] {
  const { ways } = book.show;
  return [
    { name: 'Area', ways: ways.sectionArea, value: one.areaMm2 },
    { name: 'Second moment, bending in depth', ways: ways.inertia, value: one.ixMm4 },
    { name: 'Second moment, bending in width', ways: ways.inertia, value: one.iyMm4 },
    { name: 'Torsion constant', ways: ways.inertia, value: one.jMm4 },
    ...Object.entries(one.kgPerM).map(([alloy, value]) => ({ name: `Mass in ${alloy}`, ways: ways.lineMass, value })),
  ];
}

export function materialTable(book: Book) {
  const { library } = book.assessment.model;
  const { byAlloy } = book.assessment.figures.takeOff;
  const mpa = (pa: number | undefined) => (pa === undefined ? undefined : pa / 1e6);
  return table(book.show, {
    rows: Object.entries(byAlloy),
    columns: (c) => [
      c.id('Alloy', ([id]) => id),
      c.text('Kind', ([id]) => library.materials.get(id)?.materialKind),
      c.count('Density', ([id]) => library.materials.get(id)?.densityKgM3, 0, 'kg/m³'),
      c.count('Yield', ([id]) => mpa(library.materials.get(id)?.yieldPa), 0, 'MPa'),
      c.count('Tensile', ([id]) => mpa(library.materials.get(id)?.tensilePa), 0, 'MPa'),
      c.text('Weld group', ([id]) => library.materials.get(id)?.group),
      c.count('Parts', ([, sum]) => sum.count),
      c.mass('Mass', ([, sum]) => sum.massKg),
    ],
    empty: 'No alloy has any recorded part.',
  });
}

/** How much of the primary structure papers follow back to its heat, with what that means. */
function tracedWords(book: Book): string | undefined {
  const { share, primaryKg, tracedKg, assumptions } = book.assessment.figures.materials;
  if (share === undefined) return undefined;
  const told = `${book.show.mass(tracedKg)} of ${book.show.mass(primaryKg)} primary structure (${book.show.percent(share)}) is traced to its heat.`;
  return [told, ...assumptions].join(' ');
}

/** More members than this of one heat are counted, not named: each stands with its heat in the member schedule. */
const MOST_NAMED = 12;

function heatTable(book: Book) {
  return table<HeatFigure>(book.show, {
    look: 'tight',
    rows: book.assessment.figures.materials.heats,
    columns: (c) => [
      c.id('Heat', (one) => one.heat),
      c.text('Alloy', (one) => one.alloys.join(', ')),
      c.text('Certificate', (one) =>
        one.certificates.length === 0
          ? 'none on record: not traced'
          : one.certificates
              .map(({ id, type, document }) => [`${id}, EN 10204 ${type}`, document].filter(Boolean).join(', '))
              .join('; '),
      ),
      c.count('Members', (one) => one.members.length),
      c.mass('Mass', (one) => one.massKg),
      c.refs(
        'Which',
        (one) => one.members.slice(0, MOST_NAMED),
        (one) => (one.members.length > MOST_NAMED ? `and ${one.members.length - MOST_NAMED} more` : undefined),
      ),
    ],
    empty: 'No heats are recorded.',
  });
}

export function clampTable(book: Book) {
  return table(book.show, {
    look: 'roll',
    widthMm: ROLL_MM,
    rows: book.assessment.model.shell.clamps,
    home: (clamp) => clamp.id,
    marks: (clamp) => decisionsOf(book, clamp.id),
    columns: (c) => [
      c.id('Id', (clamp) => clamp.id),
      c.text(
        'Kind',
        (clamp) => clamp.clampKind,
        (clamp) => [clamp.damper && `damper ${clamp.damper}`, insulatorWords(clamp)].filter(Boolean).join(', '),
      ),
      placeColumn(book, 'Where', (clamp) => clamp.at),
      c.text('Bolt', (clamp) => clamp.bolt),
      c.text('Torque', (clamp) => (clamp.torqueNm === undefined ? undefined : book.show.torque(clamp.torqueNm))),
      c.text('Done', (clamp) => book.show.date(clamp.date)),
      c.text('Check again', (clamp) => clamp.checkAgain),
    ],
    empty: 'No clamps, U-bolts or dampers are recorded.',
  });
}
