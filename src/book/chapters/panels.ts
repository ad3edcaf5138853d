import type { BehindItem } from '../../compute/access/types.js';
import type { Panel } from '../../model/structure.js';
import type { Book, ChapterMaker } from '../book.js';
import { ref, table } from '../table.js';
import { protectionWords, reachWords } from '../where.js';
import { fixingWords } from './skins.js';

export const accessPanels = (book: Book): readonly Panel[] =>
  book.assessment.model.shell.panels.filter((panel) => panel.panelKind === 'access');

/** A card for each access panel: where it is, how it opens, everything behind it, nearest first. */
export const panels: ChapterMaker = (book) => ({
  key: 'panels',
  title: 'Access panels',
  template: 'panels',
  data: {
    figures: book.draw.panels(book.assessment, book.room('landscape', 26)).map((figure) => ({ ...figure, sheet: 'landscape' })),
    cards: accessPanels(book).map((panel) => card(book, panel)),
  },
});

/** The facts that one needs before lifting a tool. */
export function openingFacts(book: Book, panel: Panel) {
  const { show } = book;
  const opening = panel.openingMm?.map((mm) => show.length(mm)).join(' × ');
  return [
    { name: 'Faces', value: panel.facing ?? 'not recorded' },
    { name: 'Clear opening', value: opening ?? 'not recorded' },
    { name: 'How it opens', value: fixingWords(panel.fixing) || 'not recorded' },
    panel.fixing?.torqueNm !== undefined && { name: 'Torque', value: show.torque(panel.fixing.torqueNm) },
    panel.massKg !== undefined && { name: 'Weighs', value: show.mass(panel.massKg) },
  ].filter(Boolean);
}

function card(book: Book, panel: Panel) {
  const items = book.assessment.figures.access.behind[panel.id] ?? [];
  return {
    id: panel.id,
    name: panel.name,
    of: panel.of ? ref(panel.of) : undefined,
    facts: openingFacts(book, panel),
    note: panel.note,
    keyPlan: book.draw.panelKeyPlan(book.assessment, panel.id, { widthMm: 82, heightMm: 48 }),
    face: book.draw.panelFace(book.assessment, panel.id, { widthMm: 88, heightMm: 88 }),
    hazards: hazardsBehind(book, items),
    behind: behindTable(
      book,
      items.filter((item) => item.kind !== 'member'),
      items.some((item) => item.kind === 'member'),
    ),
    members: items
      .filter((item) => item.kind === 'member')
      .map((item) => ({ ref: ref(item.id), distance: book.show.length(item.distanceMm) })),
  };
}

/** What may hurt the one who reaches in: told before the list. */
function hazardsBehind(book: Book, items: readonly BehindItem[]): string | undefined {
  const { shell } = book.assessment.model;
  const media = new Map([...shell.nodes, ...shell.runs].map((one) => [one.id, one.medium]));
  const found = new Set(items.map((item) => media.get(item.id)));
  const words = [
    found.has('gas') && 'gas',
    found.has('ac') && 'mains voltage',
    found.has('hydraulic') && 'hydraulic pressure',
    found.has('refrigerant') && 'refrigerant under pressure',
  ]
    .filter(Boolean)
    .join(', ');
  return words || undefined;
}

function behindTable(book: Book, items: readonly BehindItem[], keepEmpty: boolean) {
  const { shell } = book.assessment.model;
  const words = (item: BehindItem): string => {
    const record = shell.byId.get(item.id)?.record as
      | { name?: string; part?: string; nodeKind?: string; circuit?: string; medium?: string }
      | undefined;
    const circuit = shell.circuits.find((one) => one.id === record?.circuit);
    return record?.name ?? record?.part ?? circuit?.name ?? record?.nodeKind ?? item.kind;
  };
  const protection = (item: BehindItem): string | undefined => {
    const record = shell.byId.get(item.id)?.record as { circuit?: string } | undefined;
    return protectionWords(shell.circuits.find((one) => one.id === record?.circuit));
  };
  return table(book.show, {
    caption: 'Behind it, nearest first',
    look: 'dense',
    rows: items,
    columns: (c) => [
      c.refs('Id', (item) => [item.id]),
      c.text('What', words, protection),
      c.length('Distance', (item) => item.distanceMm),
      c.text(
        'Reach',
        (item) => reachWords(item.reach),
        (item) => (item.blockedBy.length > 0 ? `behind ${item.blockedBy.join(', ')}` : undefined),
      ),
      c.page((item) => item.id),
    ],
    empty: 'No service, equipment or zone is recorded behind it.',
    keepEmpty,
  });
}

/** Owner's edition: which panels there are and how each opens, without what lies behind. */
export const panelsOverview: ChapterMaker = (book) => {
  return {
    key: 'panels',
    title: 'Access panels and shut-offs',
    template: 'panels-owner',
    data: {
      figures: book.draw.panels(book.assessment, book.room('landscape', 26)).map((figure) => ({ ...figure, sheet: 'landscape' })),
      panels: table(book.show, {
        rows: accessPanels(book),
        home: (panel) => panel.id,
        columns: (c) => [
          c.id('Panel', (panel) => panel.id),
          c.text('Name', (panel) => panel.name ?? panel.note),
          c.text('Faces', (panel) => panel.facing),
          c.text('How it opens', (panel) => fixingWords(panel.fixing)),
          c.text('Clear opening', (panel) => panel.openingMm?.map((mm) => book.show.length(mm)).join(' × ')),
          c.count('Items behind', (panel) => book.assessment.figures.access.behind[panel.id]?.length ?? 0),
        ],
        empty: 'No access panels are recorded.',
      }),
      valves: valveTable(book),
    },
  };
};

function valveTable(book: Book) {
  const nodes = book.assessment.model.shell.nodes.filter((node) => ['valve', 'drain', 'source', 'panel'].includes(node.nodeKind));
  const first = new Map(book.assessment.figures.access.nodes.map((one) => [one.id, one]));
  return table(book.show, {
    rows: nodes,
    home: (node) => node.id,
    columns: (c) => [
      c.id('Id', (node) => node.id),
      c.text(
        'What',
        (node) => [node.name, node.nodeKind].filter(Boolean).join(', '),
        (node) => book.draw.mediumName(node.medium),
      ),
      c.text('Normally', (node) => node.position?.replace('normally ', '')),
      c.refs('Panel', (node) => (first.get(node.id)?.open ? [] : [first.get(node.id)?.panels[0]?.panel])),
    ],
    empty: 'No shut-offs are recorded.',
  });
}
