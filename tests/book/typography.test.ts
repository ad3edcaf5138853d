import { readFileSync } from 'node:fs';
import path from 'node:path';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { beforeAll, describe, expect, it } from 'vitest';
import { indexOrder } from '../../src/book/index-order.js';
import { marginsOn, type PaperSize, sheetsOf, textWidth } from '../../src/book/print/document.js';
import { printedDemo } from '../support/printed-demo.js';

/** A stretch of words on a page, mm from its left and upper edge. */
interface Piece {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
}
interface Page {
  readonly number: number;
  readonly widthMm: number;
  readonly heightMm: number;
  /** Within the text, in the order of the file. */
  readonly body: readonly Piece[];
  readonly head: string;
  /** What stands at the edge beside the text. */
  readonly edge: readonly Piece[];
  /** The first thing that a screen reader is told of. */
  readonly begins: string;
  /** All that it is told of. */
  readonly roles: ReadonlySet<string>;
}

const MM = 25.4 / 72;

async function read(edition: string): Promise<readonly Page[]> {
  const file = path.join((await printedDemo()).top, 'demo', 'books', `OV-021-${edition}.pdf`);
  const task = getDocument({ data: Uint8Array.from(readFileSync(file)), isEvalSupported: false, verbosity: 0 });
  const document = await task.promise;
  const pages: Page[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number);
    const [, , width = 0, height = 0] = page.view;
    const items = (await page.getTextContent()).items as unknown as { str: string; transform: number[]; width: number }[];
    const tree = (await page.getStructTree()) as unknown as Tag | null;
    const pieces = items
      .filter(({ str }) => str.trim() !== '')
      .map(({ str, transform: [, , , , x = 0, y = 0], width: wide }) => ({
        text: str,
        x: x * MM,
        y: (height - y) * MM,
        width: wide * MM,
      }));
    const inHead = (one: Piece): boolean => one.y < HEAD_MM;
    const inFoot = (one: Piece): boolean => one.y > height * MM - FOOT_MM;
    const atEdge = (one: Piece): boolean => one.x + one.width < EDGE_MM || one.x > width * MM - EDGE_MM;
    const within = pieces.filter((one) => !inHead(one) && !inFoot(one));
    pages.push({
      number,
      widthMm: width * MM,
      heightMm: height * MM,
      body: within.filter((one) => !atEdge(one)),
      edge: within.filter(atEdge),
      head: pieces
        .filter(inHead)
        .map(({ text }) => text)
        .join(''),
      begins: firstRole(tree),
      roles: rolesOf(tree),
    });
    page.cleanup();
  }
  await task.destroy();
  return pages;
}

/** Above and below that only running heads and feet stand, and beside that only tabs. */
const [HEAD_MM, FOOT_MM, EDGE_MM] = [14, 13, 15.5];

interface Tag {
  readonly role?: string;
  readonly id?: string;
  readonly children?: readonly Tag[];
}

function firstRole(tag: Tag | null): string {
  if (!tag) return '';
  if (tag.role && !/^(?:Root|Document|Div|NonStruct|Sect)$/u.test(tag.role)) return tag.role;
  for (const kid of tag.children ?? []) {
    const found = firstRole(kid);
    if (found) return found;
  }
  return '';
}

function rolesOf(tag: Tag | null, found = new Set<string>()): Set<string> {
  if (tag?.role) found.add(tag.role);
  for (const kid of tag?.children ?? []) rolesOf(kid, found);
  return found;
}

const chapterOf = ({ head }: Page): string =>
  head
    .split('·')[0]
    ?.replace(/, continued\s*$/u, '')
    .trim() ?? '';

/** Signs of an id that the narrowest column, that of the index, has room for. */
const LONGEST_WHOLE = 10;

/** Words that go on with the first sign of the next line. */
const OPEN = [
  { ends: /(?:^|[\s(,;])[A-Z][A-Z0-9]{0,6}(?:-[A-Z0-9]{1,6}){0,3}[-/]$/u, goesOn: /^[A-Z0-9]/u },
  { ends: /\d-$/u, goesOn: /^\d+\/\d/u },
  { ends: /\b\d+\/$/u, goesOn: /^\d/u },
  { ends: /\b\d{1,2} [A-Z][a-z]{2}$/u, goesOn: /^\d{4}\b/u },
] as const;

describe.each(['owner', 'service'])('pages of the %s edition', (edition) => {
  let pages: readonly Page[];
  beforeAll(async () => {
    pages = await read(edition);
  });

  it('keep ids, fractions and dates on one line', () => {
    const broken = pages.flatMap(({ number, body }) =>
      body.flatMap((piece, at) => {
        const next = body[at + 1];
        if (!next || next.y < piece.y + 1 || next.x > piece.x + piece.width) return [];
        const id = `${/[^\s(,;]*$/u.exec(piece.text.trimEnd())?.[0]}${/^[^\s),;.]*/u.exec(next.text)?.[0]}`;
        if (id.length > LONGEST_WHOLE) return [];
        const isOpen = OPEN.some(({ ends, goesOn }) => ends.test(piece.text.trimEnd()) && goesOn.test(next.text));
        return isOpen ? [`page ${number}: ${piece.text.slice(-20)}|${next.text.slice(0, 12)}`] : [];
      }),
    );
    expect(broken).toEqual([]);
  });

  it('have their text nearer to the outer edge, with room for the binding', () => {
    const sheets = sheetsOf('letter');
    const upright = pages.filter((page) => page.widthMm < page.heightMm && page.number > 1);
    expect(upright.length).toBeGreaterThan(20);
    for (const { number, body } of upright) {
      const { left } = marginsOn(sheets.portrait, number % 2 === 1 ? 'right' : 'left');
      expect([number, Math.min(...body.map(({ x }) => x)) > left - 0.5]).toEqual([number, true]);
      expect([number, Math.max(...body.map(({ x, width }) => x + width)) < left + textWidth(sheets.portrait) + 0.5]).toEqual([
        number,
        true,
      ]);
    }
  });

  it('say in their head what goes on from the page before', () => {
    const goingOn = pages.filter((page, at) => {
      const before = pages[at - 1];
      return before && chapterOf(before) === chapterOf(page) && !/^(?:H\d|)$/u.test(page.begins);
    });
    expect(goingOn.length).toBeGreaterThan(0);
    expect(goingOn.filter(({ head }) => !/continued/u.test(head)).map(({ number, head }) => `${number} ${head}`)).toEqual([]);
  });

  it('are a third full, but at the end of a chapter, where the sheet turns, and before a drawing that needs a page', () => {
    const low = pages.filter((page, at) => {
      const next = pages[at + 1];
      if (!next || page.body.length === 0 || chapterOf(next) !== chapterOf(page)) return false;
      if (next.widthMm > next.heightMm !== page.widthMm > page.heightMm) return false;
      if (next.roles.has('Figure') && !next.roles.has('Table')) return false;
      return Math.max(...page.body.map(({ y }) => y)) < HEAD_MM + (page.heightMm - HEAD_MM - FOOT_MM) / 3;
    });
    expect(low.map(({ number, head }) => `${number} ${head}`)).toEqual([]);
  });

  if (edition === 'service')
    it('say, where they are of a panel, which one in their head and at their outer edge', () => {
      const cards = pages.filter((page) => chapterOf(page) === 'Access panels' && page.edge.length > 0);
      expect(cards.length).toBeGreaterThan(30);
      for (const { number, head, edge, widthMm } of cards) {
        const id = edge.map(({ text }) => text).join('');
        expect(id).toMatch(/^AP-\d+$/u);
        expect(head).toContain(id);
        expect((edge[0]?.x ?? 0) > widthMm / 2).toBe(number % 2 === 1);
      }
    });
});

describe('margins', () => {
  it('make room for holes on the side of the binding, with the same width of text on either side', () => {
    // ISO 838: the middle of a punched hole is 12 mm from the edge of the sheet, the hole 6 mm wide.
    for (const paper of ['letter', 'a4'] as const) {
      const { portrait, landscape } = sheetsOf(paper);
      expect(marginsOn(portrait, 'right').left).toBeGreaterThanOrEqual(20);
      expect(marginsOn(portrait, 'left').right).toBeGreaterThanOrEqual(20);
      expect(marginsOn(landscape, 'right').top).toBeGreaterThanOrEqual(20);
      expect(marginsOn(landscape, 'left').bottom).toBeGreaterThanOrEqual(20);
      const width = (sheet: PaperSize, side: 'left' | 'right'): number => {
        const { left, right } = marginsOn(sheet, side);
        return sheet.widthMm - left - right;
      };
      expect(width(portrait, 'left')).toBeCloseTo(width(portrait, 'right'), 9);
    }
  });
});

describe('the order of an index', () => {
  it('has numbers as numbers, and capitals and accents beside the plain letter', () => {
    expect(
      ['light 10', 'Zinc', 'light 2', 'Éclairage', 'eave', 'axle', 'Axle 2', 'DC-12', 'DC-2'].sort(indexOrder('en')),
    ).toEqual(['axle', 'Axle 2', 'DC-2', 'DC-12', 'eave', 'Éclairage', 'light 2', 'light 10', 'Zinc']);
  });

  it('is that of the reader’s language', () => {
    // Real Academia Española, Ortografía: ñ is a letter of its own, between n and o.
    expect(['ñandú', 'nuez', 'oca'].sort(indexOrder('es'))).toEqual(['nuez', 'ñandú', 'oca']);
  });
});
