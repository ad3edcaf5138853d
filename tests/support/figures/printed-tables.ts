/** Tables of a printed book, read from the tags of the PDF file: what a screen reader reads, and so what is printed. */
export interface PrintedCell {
  readonly text: string;
  readonly head: boolean;
}

export interface PrintedTable {
  readonly page: number;
  /** The heading that it stands under. */
  readonly heading: string;
  readonly rows: readonly (readonly PrintedCell[])[];
}

export interface Tag {
  readonly role?: string;
  readonly type?: string;
  readonly id?: string;
  readonly children?: readonly Tag[];
}

export interface MarkedItem {
  readonly type?: string;
  readonly id?: string;
  readonly str?: string;
  readonly hasEOL?: boolean;
}

const plain = (text: string): string => text.replace(/[\s\u00a0]+/gu, ' ').trim();

/** The tables of one page, and the heading that holds at its end. */
export function tablesOfPage(
  number: number,
  tree: Tag | null,
  items: readonly MarkedItem[],
  before: string,
): { readonly tables: readonly PrintedTable[]; readonly heading: string } {
  const words = marked(items);
  const tables: PrintedTable[] = [];
  let heading = before;
  const said = (tag: Tag): string => {
    if (tag.type === 'content') return words.get(tag.id ?? '') ?? '';
    return (tag.children ?? []).map(said).join(tag.role === 'Link' || tag.role === 'Span' ? '' : ' ');
  };
  const walk = (tag: Tag): void => {
    if (/^H\d?$/u.test(tag.role ?? '')) heading = plain(said(tag));
    if (tag.role === 'Table') tables.push({ page: number, heading, rows: rowsOf(tag, said) });
    else for (const child of tag.children ?? []) walk(child);
  };
  if (tree) walk(tree);
  return { tables, heading };
}

/** The same of a page before it is printed. */
export function tablesOfHtml(html: string): readonly PrintedTable[] {
  const text = (part: string): string => plain(part.replace(/<[^>]+>/gu, ' ').replace(/&(?:nbsp|#160);/gu, ' '));
  let heading = '';
  return [...html.matchAll(/<h[1-4][^>]*>(?<heading>.*?)<\/h[1-4]>|<table[^>]*>(?<table>.*?)<\/table>/gsu)].flatMap(
    ({ groups = {} }) => {
      if (groups.heading !== undefined) heading = text(groups.heading);
      if (groups.table === undefined) return [];
      const rows = [...groups.table.matchAll(/<tr[^>]*>(.*?)<\/tr>/gsu)].map(([, row = '']) =>
        [...row.matchAll(/<t(?<kind>[dh])[^>]*>(?<cell>.*?)<\/t[dh]>/gsu)].map(({ groups: one = {} }) => ({
          text: text(one.cell ?? ''),
          head: one.kind === 'h',
        })),
      );
      return [{ page: 0, heading, rows }];
    },
  );
}

/** Words of each piece of marked content. */
function marked(items: readonly MarkedItem[]): ReadonlyMap<string, string> {
  const words = new Map<string, string>();
  const open: (string | undefined)[] = [];
  for (const { type, id, str = '', hasEOL } of items) {
    if (type === 'beginMarkedContentProps' || type === 'beginMarkedContent') open.push(id);
    else if (type === 'endMarkedContent') open.pop();
    else {
      const within = open.findLast((one) => one !== undefined);
      if (within === undefined) continue;
      // An id that is broken after its hyphen is one id.
      words.set(within, `${words.get(within) ?? ''}${str}${hasEOL && !/\S-$/u.test(str) ? ' ' : ''}`);
    }
  }
  return words;
}

function rowsOf(table: Tag, said: (tag: Tag) => string): readonly (readonly PrintedCell[])[] {
  const rows: (readonly PrintedCell[])[] = [];
  const walk = (tag: Tag): void => {
    if (tag.role === 'TR') rows.push((tag.children ?? []).map((cell) => ({ text: plain(said(cell)), head: cell.role === 'TH' })));
    else for (const child of tag.children ?? []) walk(child);
  };
  walk(table);
  return rows;
}
