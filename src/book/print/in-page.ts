/**
 * What runs inside the browser's page. Each function stands alone: it is sent there as text, and sees nothing of this file.
 */
import type { Block } from './paginate.js';

/** What the functions below find in the page, put there by {@link install}. */
interface Installed {
  /** Wraps what must not break at a line's end, in the words of a part of the page. */
  sbTie(root: DocumentFragment | Element): void;
}

/**
 * Puts into the page what several of its functions need. A browser breaks a line after the hyphen or stroke of an id, a fraction or a date,
 * and between a figure and its unit: each such word becomes a `span.w`, which the style sheet keeps whole.
 */
export function install(): void {
  const unit = '(?:in|ft|lb|lbf|mm|m|kg|kN|kPa|bar|psi|A|V|W|Ah|L|gal|N·m|ft·lb|in·lb|°F|°C)';
  const whole = new RegExp(
    [
      '(?:\\d+ ft )?\\d+-\\d+\\/\\d+(?:[ \\u00a0](?:in|ft|lb)\\b)?',
      '\\d+\\/\\d+ (?:in|ft)\\b',
      '\\d+ ft \\d+ in\\b',
      '\\d{4}-\\d{2}-\\d{2}',
      '\\d{1,2} [A-Z][a-z]{2} \\d{4}',
      '(?<![\\w/-])[A-Z][A-Z0-9]{0,7}(?:-[A-Z0-9]{1,8}){1,4}(?:\\/[A-Z0-9][A-Za-z0-9]{0,5}){0,2}(?![\\w/-])',
      '(?<![\\w/-])[A-Z][A-Z0-9]{0,5}\\/[A-Z0-9][A-Za-z0-9]{0,5}(?![\\w/-])',
      `\\d[\\d,.]* ${unit}(?![\\w·])`,
    ].join('|'),
    'gu',
  );
  const longest = 18;
  const installed: Installed = {
    sbTie(root) {
      const found: Text[] = [];
      const waiting: Node[] = [root];
      for (let node = waiting.pop(); node; node = waiting.pop()) {
        if (node instanceof Text) {
          if (/\d[- /]|[A-Z0-9][-/][A-Z0-9]/.test(node.data)) found.push(node);
        } else if (!(node instanceof Element && (node.tagName === 'svg' || node.matches('a.ref, .w'))))
          for (let kid = node.firstChild; kid; kid = kid.nextSibling) waiting.push(kid);
      }
      for (const text of found) {
        const parts: (string | Element)[] = [];
        let from = 0;
        for (const match of text.data.matchAll(whole)) {
          if (match[0].length > longest) continue;
          const word = document.createElement('span');
          word.className = 'w';
          word.textContent = match[0];
          parts.push(text.data.slice(from, match.index), word);
          from = match.index + match[0].length;
        }
        if (parts.length > 0) text.replaceWith(...parts, text.data.slice(from));
      }
    },
  };
  Object.assign(globalThis, installed);
}

/** Puts a chapter behind the others, or before the one at a place among them, and lays it out. */
export function addChapter(html: string, at?: number): void {
  const holder = document.createElement('template');
  holder.innerHTML = html;
  const chapter = holder.content.firstElementChild as HTMLElement;
  (globalThis as unknown as Installed).sbTie(chapter);
  chapter.dataset.tied = '';
  const after = at === undefined ? null : (document.querySelectorAll('section.chapter')[at] ?? null);
  document.body.insertBefore(chapter, after);
  chapter.getBoundingClientRect();
}

export function picturesThere(): boolean {
  return Array.from(document.images).every((picture) => picture.complete);
}

/** Links whose target this edition does not print become plain text; place is reserved for every page number. */
export function prepare(): { readonly dangling: readonly string[]; readonly doubled: readonly string[] } {
  for (const chapter of document.querySelectorAll<HTMLElement>('section.chapter:not([data-tied])'))
    (globalThis as unknown as Installed).sbTie(chapter);
  const ids = new Map<string, number>();
  for (const one of document.querySelectorAll('[id]')) ids.set(one.id, (ids.get(one.id) ?? 0) + 1);
  const dangling = new Set<string>();
  for (const link of Array.from(document.querySelectorAll('a'))) {
    const href = link.getAttribute('href') ?? link.getAttribute('xlink:href') ?? '';
    if (!href.startsWith('#') || ids.has(href.slice(1))) continue;
    dangling.add(href.slice(1));
    const aside = link.closest('.at-page');
    if (aside) {
      aside.remove();
      continue;
    }
    const plain = document.createElementNS(link.namespaceURI as string, link instanceof SVGElement ? 'g' : 'span');
    plain.append(...Array.from(link.childNodes));
    if (link.getAttribute('class')) plain.setAttribute('class', link.getAttribute('class') as string);
    link.replaceWith(plain);
  }
  for (const link of document.querySelectorAll('a.pg')) if (link.textContent !== '000') link.textContent = '000';
  for (const empty of document.querySelectorAll('span.pg')) empty.remove();
  return { dangling: [...dangling], doubled: [...ids].filter(([, count]) => count > 1).map(([id]) => id) };
}

/**
 * Heights of every block and every table row at their true width; fixes the columns of each table so that its parts line up. All is
 * read before anything is written: a write between two readings makes the browser lay the whole book out anew. `only`: the blocks of those
 * chapters alone, which were measured before.
 */
export function measure(widthMm: Readonly<Record<'portrait' | 'landscape', number>>, only?: readonly string[]): Block[] {
  const MM = 25.4 / 96;
  const isHeading = (one: Element | null) => one !== null && /^H[1-6]$/.test(one.tagName);
  /** A line between a heading and the table or drawing that it speaks of. */
  const introduces = (one: Element) =>
    one.tagName === 'P' &&
    isHeading(one.previousElementSibling) &&
    /^(TABLE|FIGURE|DL)$/.test(one.nextElementSibling?.tagName ?? '');
  const sheetOf = (one: HTMLElement) => (one.dataset.sheet === 'landscape' ? 'landscape' : 'portrait');
  const elements = Array.from(document.querySelectorAll<HTMLElement>('section.chapter > *')).filter(
    (one) => !only || only.includes(one.parentElement?.dataset.chapter ?? ''),
  );
  const wordsOf = (one: Element) => (one.textContent ?? '').trim().replace(/\s+/g, ' ');

  // What is wider than the sheet is made smaller: nothing may stick out of its page.
  const zooms = elements.map((one) =>
    Math.min(1, (widthMm[sheetOf(one)] / MM + 0.5) / Math.max(one.scrollWidth, one.offsetWidth, 1)),
  );
  elements.forEach((one, at) => {
    if ((zooms[at] as number) < 1) one.style.setProperty('zoom', String(zooms[at]));
  });

  const columns = new Map<HTMLTableElement, { readonly widths: readonly number[]; readonly whole: number }>();
  const blocks = elements.map((element, at): Block => {
    const chapter = element.parentElement as HTMLElement;
    const zoom = zooms[at] as number;
    const base = {
      chapter: chapter.dataset.chapter ?? '',
      heightMm: element.getBoundingClientRect().height * MM,
      gapBeforeMm: Number.parseFloat(getComputedStyle(element).marginTop) * MM,
      keepWithNext: isHeading(element) || element.classList.contains('keep') || introduces(element),
      breakBefore: element === chapter.firstElementChild || element.classList.contains('break'),
      sheet: sheetOf(element),
      // Measured once more, it has its smaller size already.
      ...(element.style.zoom ? { narrowed: Number(element.style.zoom) } : {}),
      ...(isHeading(element) ? { heading: wordsOf(element) } : {}),
      ...(element.dataset.tab ? { tab: element.dataset.tab } : {}),
      ...(element.dataset.side ? { side: element.dataset.side as 'left' | 'right' } : {}),
    } as const;
    if (element.tagName !== 'TABLE') return { ...base, kind: 'solid' };
    const table = element as HTMLTableElement;
    const rows = Array.from(table.querySelectorAll<HTMLElement>(':scope > tbody > tr')).map((row) => ({
      heightMm: row.getBoundingClientRect().height * MM,
      keepWithNext: row.classList.contains('keep'),
    }));
    const body = rows.reduce((sum, row) => sum + row.heightMm, 0);
    const widest = Array.from(table.rows).find((row) => Array.from(row.cells).every((cell) => cell.colSpan === 1));
    if (widest && !table.querySelector('colgroup')) {
      const widths = Array.from(widest.cells).map((cell) => cell.getBoundingClientRect().width / zoom);
      columns.set(table, { widths, whole: table.getBoundingClientRect().width / zoom });
    }
    const side = table.dataset.columns === '2' ? ({ columns: 2 } as const) : {};
    return { ...base, ...side, kind: 'table', headMm: Math.max(0, base.heightMm - body), rows };
  });

  if (!only)
    elements.forEach((one, at) => {
      one.dataset.block = String(at);
    });
  for (const [table, { widths, whole }] of columns) {
    const group = document.createElement('colgroup');
    for (const width of widths) {
      const column = document.createElement('col');
      column.style.width = `${width}px`;
      group.append(column);
    }
    table.prepend(group);
    table.style.tableLayout = 'fixed';
    table.style.width = `${whole}px`;
  }
  return blocks;
}

interface PageOrder {
  readonly chapter: string;
  readonly sheet: 'portrait' | 'landscape';
  /** Name of its `@page` rule. */
  readonly rule: string;
  readonly pieces: readonly {
    readonly block: number;
    readonly rows?: readonly [number, number];
    readonly split?: number;
    readonly shrink?: number;
  }[];
}

/**
 * Moves the blocks into page boxes, fills in the page numbers, and tells on which page each anchor stands and what is there: the words of
 * a heading, the id of a record. Leaves the body hidden.
 */
export function assemble(pages: readonly PageOrder[]): [anchor: string, page: number, words?: string][] {
  document.body.style.display = 'none';
  const byBlock = new Map<number, HTMLElement>();
  for (const one of document.querySelectorAll<HTMLElement>('[data-block]')) byBlock.set(Number(one.dataset.block), one);
  const rowsOf = new Map<number, Element[]>();
  const book = document.createElement('main');
  /** The part of a table with some of its rows, under the same head. */
  const partOf = (element: HTMLElement, rows: readonly Element[]): HTMLElement => {
    const node = element.cloneNode(false) as HTMLElement;
    node.removeAttribute('id');
    for (const part of Array.from(element.children)) {
      if (part.tagName === 'TBODY') continue;
      const copy = part.cloneNode(true) as HTMLElement;
      for (const named of [copy, ...Array.from(copy.querySelectorAll('[id]'))]) named.removeAttribute('id');
      node.append(copy);
    }
    const body = document.createElement('tbody');
    body.append(...rows);
    node.append(body);
    return node;
  };
  pages.forEach((page, at) => {
    const box = document.createElement('section');
    box.className = `leaf ${page.sheet}`;
    box.dataset.page = String(at + 1);
    for (const piece of page.pieces) {
      const element = byBlock.get(piece.block) as HTMLElement;
      let node = element;
      if (piece.rows) {
        const rows = rowsOf.get(piece.block) ?? Array.from(element.querySelectorAll(':scope > tbody > tr'));
        rowsOf.set(piece.block, rows);
        const [from, to] = piece.rows;
        if (piece.split !== undefined) {
          node = document.createElement('div');
          node.className = 'two-columns';
          for (const part of [rows.slice(from, piece.split), rows.slice(piece.split, to)])
            if (part.length > 0) node.append(partOf(element, part));
        } else if (from > 0) node = partOf(element, rows.slice(from, to));
        else (node.querySelector(':scope > tbody') as HTMLElement).replaceChildren(...rows.slice(from, to));
      }
      if (piece.shrink) node.style.setProperty('zoom', String(piece.shrink * Number(node.style.zoom || 1)));
      box.append(node);
    }
    // The box is kept whole, and the browser asks only what is not kept whole for the name of its page.
    const turn = document.createElement('div');
    turn.className = 'turn';
    turn.style.setProperty('page', page.rule);
    turn.append(box);
    book.append(turn);
  });
  document.body.replaceChildren(book);
  document.body.classList.add('paged');
  const stands: [string, number, string?][] = [];
  const pageOf = new Map<string, number>();
  const idOf = new Map<string, string>();
  for (const link of document.querySelectorAll('a.ref')) {
    const id = (link.textContent ?? '').trim();
    const anchor = `r-${id.replace(/[^A-Za-z0-9_-]/gu, (sign) => `.${(sign.codePointAt(0) as number).toString(16)}`)}`;
    if (link.getAttribute('href') === `#${anchor}`) idOf.set(anchor, id);
  }
  for (const one of document.querySelectorAll('[id]')) {
    const page = Number(one.closest<HTMLElement>('.leaf')?.dataset.page);
    if (!page) continue;
    pageOf.set(one.id, page);
    const words = /^[ch]-/.test(one.id) ? (one.textContent ?? '').trim().replace(/\s+/g, ' ') : idOf.get(one.id);
    stands.push(words ? [one.id, page, words] : [one.id, page]);
  }
  for (const link of document.querySelectorAll('a.pg')) {
    link.textContent = String(pageOf.get((link.getAttribute('href') as string).slice(1)) ?? '');
  }
  return stands;
}

/** Sets chapters closer, or as they were before: less air between their blocks and rows, in letters of the same size. */
export function setCloser(chapters: readonly string[], closer: boolean): void {
  for (const one of document.querySelectorAll('section.chapter > *'))
    if (chapters.includes(one.parentElement?.dataset.chapter ?? '')) one.classList.toggle('closer', closer);
}

export function unhide(): void {
  document.body.style.removeProperty('display');
}

export function addStyle(css: string): void {
  const style = document.createElement('style');
  style.textContent = css;
  document.head.append(style);
}

/** Drawings keep their size without what is in them, which takes the browser longest to lay out. */
export function emptyDrawings(): void {
  for (const drawing of document.querySelectorAll('svg')) drawing.replaceChildren();
}

/** Numbers of the pages whose boxes hold more than has room in them. */
export function overfull(): number[] {
  return Array.from(document.querySelectorAll<HTMLElement>('.leaf'))
    .filter((box) => box.scrollHeight > box.clientHeight + 1)
    .map((box) => Number(box.dataset.page));
}
