import type { SectionProperties } from '../../compute/takeoff/types.js';
import { anchor } from '../../model/anchor.js';
import type { Section } from '../../model/library.js';
import type { Member } from '../../model/structure.js';
import { type Book, type ChapterMaker, stageName } from '../book.js';
import type { Show, Way } from '../show.js';
import { table } from '../table.js';
import { placeColumn } from '../where.js';

/** Frames by stage, member schedules, sections with their properties, alloys, heats, clamps. */
export const structure: ChapterMaker = (book) => {
  const { shell } = book.assessment.model;
  return {
    key: 'structure',
    title: 'Structure',
    template: 'structure',
    data: {
      figures: book.draw.frames(book.assessment, book.room('landscape', 26)).map((figure) => ({ ...figure, sheet: 'landscape' })),
      members: memberTable(book),
      sections: usedSections(book).map((section) => sectionCard(book, section)),
      materials: materialTable(book),
      heats: heatTable(book),
      clamps: clampTable(book),
      count: shell.members.length,
      total: book.show.mass(book.assessment.figures.takeOff.members.reduce((sum, one) => sum + one.massKg, 0)),
    },
  };
};

/** In build order; what names no known stage comes last. */
function byStage(book: Book): readonly Member[] {
  const { library, shell } = book.assessment.model;
  const order = new Map(library.stages.map((stage, at) => [stage.id, at]));
  const rank = (one: Member) => (one.stage === undefined ? order.size + 1 : (order.get(one.stage) ?? order.size));
  return [...shell.members].sort((a, b) => rank(a) - rank(b));
}

function memberTable(book: Book) {
  const figures = new Map(book.assessment.figures.takeOff.members.map((one) => [one.id, one]));
  const plate = (member: Member) =>
    member.shape.kind === 'plate' ? `plate ${book.show.thickness(member.shape.thicknessMm)}` : undefined;
  return table(book.show, {
    look: 'tight',
    rows: byStage(book),
    home: (member) => member.id,
    group: (member) => stageName(book, member.stage) ?? 'No stage recorded',
    columns: (c) => [
      c.id('Member', (member) => member.id),
      c.text(
        'Part',
        (member) => member.part,
        (member) => member.note,
      ),
      c.text('Section', (member) => (member.shape.kind === 'line' ? member.shape.section : plate(member))),
      c.text('Alloy', (member) => member.alloy),
      c.id('Heat', (member) => member.heat),
      c.length('Length', (member) => (member.shape.kind === 'line' ? figures.get(member.id)?.lengthMm : undefined)),
      c.mass('Mass', (member) => figures.get(member.id)?.massKg),
    ],
    empty: 'No members are recorded.',
  });
}

function usedSections(book: Book): readonly Section[] {
  const { library, shell } = book.assessment.model;
  const used = new Set(shell.members.flatMap((one) => (one.shape.kind === 'line' ? [one.shape.section] : [])));
  return [...library.sections.values()].filter((section) => used.has(section.id));
}

function sectionCard(book: Book, section: Section) {
  const properties = book.assessment.figures.takeOff.sections.filter((one) => one.id === section.id);
  return {
    id: section.id,
    to: anchor(`section ${section.id}`),
    shape: section.dimensions.shape,
    figure: book.draw.section(section, { widthMm: 62, heightMm: 62 }, book.show.system),
    table: table(book.show, {
      widthMm: 108,
      rows: properties.flatMap((one) => propertyRows(book.show.ways, one)),
      columns: (c) => [
        c.text('Property', (row) => row.name),
        { head: 'Value', kind: 'number', cell: (row) => ({ text: row.value }) },
        c.text('Unit', (row) => row.unit),
      ],
      empty: 'No properties could be computed.',
    }),
  };
}

/** One property in every unit that this book shows. */
function propertyRows(ways: Show['ways'], one: SectionProperties) {
  const rows = (name: string, kinds: readonly Way[], value: number) =>
    kinds.map((way) => ({ name, unit: way.unit, value: way.write(value) }));
  return [
    ...rows('Area', ways.sectionArea, one.areaMm2),
    ...rows('Second moment, bending in depth', ways.inertia, one.ixMm4),
    ...rows('Second moment, bending in width', ways.inertia, one.iyMm4),
    ...rows('Torsion constant', ways.inertia, one.jMm4),
    ...Object.entries(one.kgPerM).flatMap(([alloy, kgPerM]) => rows(`Mass in ${alloy}`, ways.lineMass, kgPerM)),
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

export function heatTable(book: Book) {
  const heats = new Map<string, { alloys: Set<string>; members: string[] }>();
  for (const member of book.assessment.model.shell.members) {
    if (!member.heat) continue;
    const heat = heats.get(member.heat) ?? { alloys: new Set(), members: [] };
    heat.alloys.add(member.alloy);
    heat.members.push(member.id);
    heats.set(member.heat, heat);
  }
  return table(book.show, {
    rows: [...heats].sort(([a], [b]) => (a < b ? -1 : 1)),
    columns: (c) => [
      c.id('Heat', ([id]) => id),
      c.text('Alloy', ([, heat]) => [...heat.alloys].join(', ')),
      c.count('Members', ([, heat]) => heat.members.length),
      c.refs('Which', ([, heat]) => heat.members),
    ],
    empty: 'No heats are recorded.',
  });
}

export function clampTable(book: Book) {
  return table(book.show, {
    rows: book.assessment.model.shell.clamps,
    home: (clamp) => clamp.id,
    columns: (c) => [
      c.id('Id', (clamp) => clamp.id),
      c.text(
        'Kind',
        (clamp) => clamp.clampKind,
        (clamp) => [clamp.damper && `damper ${clamp.damper}`, clamp.isolator && 'isolator fitted'].filter(Boolean).join(', '),
      ),
      placeColumn(book, 'Where', (clamp) => clamp.at),
      c.text('Bolt', (clamp) => clamp.bolt),
      c.torque('Torque', (clamp) => clamp.torqueNm),
      c.text('Done', (clamp) => book.show.date(clamp.date)),
      c.text('Check again', (clamp) => clamp.checkAgain),
    ],
    empty: 'No clamps, U-bolts or dampers are recorded.',
  });
}
