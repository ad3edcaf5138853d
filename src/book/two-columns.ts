/** Entries of an index in two columns, read down the left one and then down the right one, page by page. */
export interface ColumnPage<T> {
  readonly rows: readonly { readonly left: T; readonly right?: T }[];
}

/** `rows` lines to a page; the last page is divided evenly. */
export function twoColumns<T>(entries: readonly T[], rows: number): readonly ColumnPage<T>[] {
  const pages: ColumnPage<T>[] = [];
  for (let from = 0; from < entries.length; from += rows * 2) {
    const here = entries.slice(from, from + rows * 2);
    const half = Math.ceil(here.length / 2);
    pages.push({
      rows: here.slice(0, half).map((left, i) => {
        const right = here[half + i];
        return right === undefined ? { left } : { left, right };
      }),
    });
  }
  return pages;
}
