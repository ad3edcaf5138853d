import { parseNumber } from '../../quantity/parse.js';
import type { ReadHead, SheetRecord } from '../rows.js';
import type { ListColumn } from './columns.js';

/** A row of a list with its cells as they stand in records. */
export class ListRow {
  constructor(private readonly one: SheetRecord) {}

  get number(): number {
    return this.one.row.number;
  }

  /** A text of this row that is no field of a record. */
  word(key: string): string | undefined {
    const value = this.one.data[key];
    return value === undefined ? undefined : String(value).trim();
  }

  headOf(key: string): ReadHead | undefined {
    return this.one.heads.find(({ column }) => column.key === key);
  }

  /** Its cells that belong to a part, by their place in the record. */
  cellsOf(
    part: ListColumn['part'],
  ): readonly { readonly column: ListColumn; readonly value: unknown; readonly head: ReadHead }[] {
    const keys = new Set<string>();
    return this.one.heads.flatMap((head) => {
      const column = head.column as ListColumn;
      const key = String(column.path[0]);
      if (column.part !== part || keys.has(key)) return [];
      keys.add(key);
      const target = column.path.length > 1 ? { ...column, target: column.target.slice(0, 1) } : column;
      const value = this.one.data[key];
      return [{ column: target, value: tidied(key, value, this.word('material')), head }];
    });
  }
}

/** What an electrician leaves in a cell where there is nothing to say. */
export const SAYS_NOTHING = /^(?:-+|–|—|n\/?a)$/iu;

/** `#14 AWG` is gauge 14; `1/2` of PEX is half an inch of it. */
function tidied(key: string, value: unknown, material: string | undefined): unknown {
  if (key === 'awg') return String(value).replace(/^#\s*|\s*(?:awg|ga(?:uge|ge)?)\.?$/giu, '');
  if (key !== 'size') return value;
  const text = String(value).trim();
  const fraction = /^((?:\d+[- ])?\d+\/\d+)(?:\s+([A-Za-z].*))?$/u.exec(text);
  const sized =
    fraction && !/^(?:in|mm|cm)\b/u.test(fraction[2] ?? '') ? `${fraction[1]} in${fraction[2] ? ` ${fraction[2]}` : ''}` : text;
  return material !== undefined && /(?:in|mm|cm|")$/u.test(sized) ? `${sized} ${material}` : sized;
}

const RATED = /^(?:(fuse|breaker|cb)\s+)?(\d[\d.,/-]*)\s*(?:a|amps?)?(?:\s+(fuse|breaker|cb))?$/iu;
const kindOfWord = (word: string): string => (/^fuse/iu.test(word) ? 'fuse' : 'breaker');

/** `15`, `15A`, `20 A breaker` with the head `Fuse` or `Breaker`: the rating, and what kind it is where that is said. */
export function ratedBy(value: unknown, head: ReadHead): { readonly rating: unknown; readonly kind?: string } {
  const text = String(value).trim();
  const match = RATED.exec(text.replace(/\s*A$/u, ''));
  const named = /fuse|breaker|\bcb\b/iu.exec(head.text)?.[0];
  const word = match?.[1] ?? match?.[3] ?? named;
  const rating = match && parseNumber(match[2] as string) !== undefined ? `${match[2]} A` : value;
  return { rating, ...(word === undefined ? {} : { kind: kindOfWord(word) }) };
}
