import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { BookInput } from '../../src/book/input.js';
import { type OpenBrowser, openChromium } from '../../src/book/print/chromium.js';
import { compareBooks, type LaidOutBook, type PageContent } from '../../src/book/supplement/compare.js';
import { type PrintedSupplement, printSupplement } from '../../src/book/supplement/print.js';
import { exchanges } from '../../src/book/supplement/ranges.js';
import { type ReadPdf, readPdf } from './read-pdf.js';
import { FINGERPRINT, HISTORY, smallAssessment } from './small-store.js';

/** A book of pages that are each named by one part; an anchor `to-x` stands where part `x` does. Its links are part of a page's markup. */
function bookOf(
  pages: readonly { readonly chapter: string; readonly part: string; readonly refs?: readonly string[] }[],
): LaidOutBook {
  return {
    pages: pages.map(
      ({ chapter, part, refs = [] }): PageContent => ({
        chapter,
        parts: [`${part}>${refs.join()}`],
        refs: refs.map((one) => `to-${one}`),
      }),
    ),
    stands: new Map(pages.map(({ part }, at) => [`to-${part}`, at + 1])),
  };
}

/** A binder as it lies on the bench: label of each page and what stands on it, numbers that it prints included. */
type Binder = readonly { readonly label: string; readonly part: string; readonly printed: Readonly<Record<string, string>> }[];

const printedBy = (page: PageContent, book: LaidOutBook, labelOf: (number: number) => string) =>
  Object.fromEntries(page.refs.flatMap((ref) => (book.stands.has(ref) ? [[ref, labelOf(book.stands.get(ref) as number)]] : [])));

const bound = (book: LaidOutBook): Binder =>
  book.pages.map((page, at) => ({
    label: String(at + 1),
    part: page.parts[0] as string,
    printed: printedBy(page, book, String),
  }));

/** What a shop does with a supplement: takes out what is named, and lays in each page at its number. */
function exchanged(old: LaidOutBook, fresh: LaidOutBook): Binder {
  const changes = compareBooks(old, fresh);
  const changed = new Map(changes.pages.map((page) => [page.label, page]));
  const gone = new Set(changes.takeOut.map(String));
  const kept = bound(old).filter(({ label }) => !gone.has(label) && !changed.has(label));
  const laidIn = [...changed.values()].map(({ label, number }) => {
    const page = fresh.pages[number - 1] as PageContent;
    return { label, part: page.parts[0] as string, printed: printedBy(page, fresh, (at) => changes.labels[at - 1] as string) };
  });
  const key = (label: string) => [Number.parseInt(label, 10), label.replace(/^\d+/u, '')] as const;
  return [...kept, ...laidIn].sort((a, b) => {
    const [n, l] = key(a.label);
    const [m, k] = key(b.label);
    return n - m || l.length - k.length || (l < k ? -1 : l > k ? 1 : 0);
  });
}

const anyBook = fc
  .uniqueArray(fc.constantFrom(...'abcdefghijklmnop'), { minLength: 2, maxLength: 12 })
  .chain((parts) =>
    fc.tuple(
      fc.constant(parts.sort()),
      fc.array(fc.subarray(parts, { maxLength: 2 }), { minLength: parts.length, maxLength: parts.length }),
    ),
  )
  .map(([parts, refs]) =>
    bookOf([
      { chapter: 'front', part: 'cover' },
      ...parts.map((part, at) => ({ chapter: part < 'h' ? 'one' : 'two', part, refs: refs[at] as string[] })),
    ]),
  );

describe('comparing two books', () => {
  const pages = (...parts: string[]) => bookOf(parts.map((part) => ({ chapter: 'a', part })));

  it('prints nothing where nothing changed', () => {
    expect(compareBooks(pages('x', 'y'), pages('x', 'y'))).toEqual({ pages: [], takeOut: [], labels: ['1', '2'] });
  });

  it('replaces what changed, letters what is one more, and takes out what is gone', () => {
    const told = (old: LaidOutBook, fresh: LaidOutBook) => {
      const { pages: changed, takeOut } = compareBooks(old, fresh);
      return { changed: changed.map(({ label, why }) => `${label} ${why}`), takeOut };
    };
    expect(told(pages('x', 'y', 'z'), pages('x', 'Y', 'z'))).toEqual({ changed: ['2 contents'], takeOut: [] });
    expect(told(pages('x', 'z'), pages('x', 'y', 'w', 'z'))).toEqual({ changed: ['1a new', '1b new'], takeOut: [] });
    expect(told(pages('x', 'y', 'z'), pages('x', 'z'))).toEqual({ changed: [], takeOut: [2] });
  });

  it('prints a page anew whose only change is the number that it refers to', () => {
    const old = bookOf([
      { chapter: 'i', part: 'index', refs: ['z'] },
      { chapter: 'a', part: 'y' },
      { chapter: 'a', part: 'z' },
    ]);
    const fresh = bookOf([
      { chapter: 'i', part: 'index', refs: ['z'] },
      { chapter: 'a', part: 'z' },
    ]);
    expect(compareBooks(old, fresh)).toMatchObject({ pages: [], takeOut: [2] });
    const moved = bookOf([
      { chapter: 'i', part: 'index', refs: ['w'] },
      { chapter: 'a', part: 'w' },
      { chapter: 'a', part: 'y' },
    ]);
    const after = bookOf([
      { chapter: 'i', part: 'index', refs: ['w'] },
      { chapter: 'a', part: 'y' },
      { chapter: 'a', part: 'w' },
    ]);
    const { pages: changed } = compareBooks(moved, after);
    expect(changed.map(({ label, why }) => `${label} ${why}`)).toContain('1 references');
  });

  it('makes the new book of the old one, in order, with every printed number true', () => {
    fc.assert(
      fc.property(anyBook, anyBook, (old, fresh) => {
        const binder = exchanged(old, fresh);
        expect(binder.map(({ part }) => part)).toEqual(fresh.pages.map((page) => page.parts[0]));
        const labelOf = new Map(binder.map(({ part, label }) => [`to-${part.split('>')[0]}`, label]));
        for (const { printed } of binder) {
          for (const [ref, label] of Object.entries(printed)) expect([ref, label]).toEqual([ref, labelOf.get(ref)]);
        }
      }),
    );
  });

  it('tells pages that follow each other in one line', () => {
    const changes = compareBooks(pages('v', 'w', 'x', 'y', 'z'), pages('v', 'W', 'X', 'y', 'z'));
    expect(exchanges(changes, () => 'Wires')).toEqual([
      { chapter: 'Wires', takeOut: '2 to 3', putIn: '2 to 3', why: 'changed at the bars' },
    ]);
  });
});

describe('a printed supplement', () => {
  let browser: OpenBrowser;
  let printed: PrintedSupplement;
  let nothing: PrintedSupplement | undefined;
  let pdf: ReadPdf;
  const input = (extra: Record<string, string>, more: Partial<BookInput> = {}): BookInput => ({
    assessment: smallAssessment(extra),
    edition: 'service',
    fingerprint: FINGERPRINT,
    history: { ...HISTORY, commits: HISTORY.commits.slice(1), revision: HISTORY.commits[1]?.hash as string },
    photoFile: async () => undefined,
    ...more,
  });

  beforeAll(async () => {
    browser = await openChromium();
    const old = input({});
    const amended = `- {id: AM-1, date: 2026-08-01, by: K7, reason: Bay light moved, changes: [DC-12/L1]}
- {id: AM-2, date: 2026-09-02, by: K7, reason: Generator changed for a lighter one, changes: [GEN]}
`;
    const components =
      '- {id: GEN, name: Small generator, mass: 640 lb, at: [300 in, 0 in, -4 in], stage: walls, basis: weighed, serial: "9902"}\n';
    const now = input(
      { 'shells/T-1/components.yaml': components, 'shells/T-1/amendments.yaml': amended },
      { history: HISTORY, fingerprint: 'ab'.repeat(32), dirty: true },
    );
    nothing = await printSupplement(browser, old, old);
    printed = (await printSupplement(browser, old, now)) as PrintedSupplement;
    pdf = await readPdf(printed.pdf);
  });
  afterAll(() => browser?.close());

  it('is not printed where every page is the same', () => {
    expect(nothing).toBeUndefined();
  });

  it('says first what replaces what, for which book, and why', () => {
    const front = pdf.pages[0]?.text ?? '';
    expect(front).toContain('Supplement to the as-built book of shell T-1');
    expect(front).toContain(`revision ${HISTORY.commits[1]?.hash.slice(0, 10)}`);
    expect(front).toContain('with changes that are not committed');
    expect(front).toMatch(/Equipment and tanks \d+ \d+ changed at the bars/u);
    expect(
      pdf.pages
        .slice(0, 2)
        .map((page) => page.text)
        .join(' '),
    ).toContain('Generator changed for a lighter one');
  });

  it('prints the changed pages alone, under the numbers that they replace', () => {
    expect(printed.pageCount).toBe(pdf.pages.length);
    const chapters = new Set(printed.changes.pages.map((page) => page.chapter));
    for (const unchanged of ['service-dc', 'service-gas', 'structure', 'welds', 'nodrill'])
      expect(chapters).not.toContain(unchanged);
    const equipment = printed.changes.pages.find((page) => page.chapter === 'equipment');
    const page = pdf.pages.find(({ text }) => text.includes('Small generator') && text.startsWith('Equipment'));
    expect(page?.text).toContain(`Page ${equipment?.label} · supplement to revision`);
  });
});
