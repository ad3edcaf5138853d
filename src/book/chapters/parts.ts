import type { Member } from '../../records/index.js';
import { type Book, type ChapterMaker, stageName } from '../book.js';
import { table } from '../table.js';
import { clampTable, materialTable } from './structure.js';

/** Service edition: like parts once, with alloy, section and the filler of their welds. Every member by itself is the shop's. */
export const parts: ChapterMaker = (book) => ({
  key: 'structure',
  title: 'Structure: parts, alloys and fillers',
  template: 'parts',
  data: {
    stages: likeParts(book),
    materials: materialTable(book),
    sections: sectionTable(book),
    clamps: clampTable(book),
    count: book.assessment.model.shell.members.length,
  },
});

interface Like {
  readonly part: string;
  readonly made: string;
  readonly alloy: string;
  readonly fillers: string;
  readonly ids: readonly string[];
}

/** Members that agree in part, section, alloy and filler, by stage. */
function likeParts(book: Book) {
  const { shell } = book.assessment.model;
  const fillers = new Map<string, Set<string>>();
  for (const { joins, filler } of shell.welds)
    for (const id of joins.flat()) fillers.set(id, (fillers.get(id) ?? new Set()).add(filler ?? 'filler not recorded'));
  const stages = [...new Set(shell.members.map(({ stage }) => stage))];
  return stages.map((stage) => {
    const groups = new Map<string, { like: Omit<Like, 'ids'>; ids: string[] }>();
    for (const member of shell.members.filter((one) => one.stage === stage)) {
      const like = {
        part: member.part,
        made: madeOfWords(book, member),
        alloy: member.alloy ?? 'not recorded',
        fillers: [...(fillers.get(member.id) ?? ['no weld recorded'])].sort().join(', '),
      };
      const key = JSON.stringify(like);
      const group = groups.get(key) ?? { like, ids: [] };
      group.ids.push(member.id);
      groups.set(key, group);
    }
    return {
      name: stage === undefined ? 'No stage recorded' : (stageName(book, stage) ?? stage),
      rows: [...groups.values()].map(({ like, ids }): Like => ({ ...like, ids })),
    };
  });
}

const madeOfWords = (book: Book, { shape }: Member): string =>
  shape.kind === 'line' ? shape.section : `plate ${book.show.thickness(shape.thicknessMm)}`;

function sectionTable(book: Book) {
  const { library, shell } = book.assessment.model;
  const used = new Map<string, number>();
  for (const { shape } of shell.members) if (shape.kind === 'line') used.set(shape.section, (used.get(shape.section) ?? 0) + 1);
  const areas = new Map(book.assessment.figures.takeOff.sections.map((one) => [one.id, one.areaMm2]));
  return table(book.show, {
    look: 'dense tight',
    rows: [...used],
    columns: (c) => [
      c.text('Section', ([id]) => id),
      c.text('Shape', ([id]) => library.sections.get(id)?.dimensions.shape),
      c.sectionArea('Area', ([id]) => areas.get(id)),
      c.count('Members', ([, count]) => count),
    ],
    empty: 'No sections are used.',
  });
}
