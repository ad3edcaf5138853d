import { ID_PATTERN } from '../../records/form/plain-fields.js';
import type { RecordIndex } from '../record-index.js';

/** The node that a word of a list means; `fresh` where it is not there yet; or what is wrong with the word. */
export type EndFound = { readonly id: string; readonly name?: string; readonly fresh: boolean } | { readonly fault: string };

/** Nodes by what a list calls them: by id, by name, by id in another case. A word that nothing has becomes a new node. */
export class Ends {
  private readonly byName = new Map<string, string[]>();
  private readonly byCase = new Map<string, string[]>();
  private readonly fresh = new Map<string, string>();

  constructor(private readonly known: RecordIndex) {
    for (const { id, data } of known.ofKind('node')) {
      if (id === undefined) continue;
      put(this.byCase, id, id);
      if (data.name !== undefined) put(this.byName, String(data.name), id);
    }
  }

  find(word: string): EndFound {
    if (this.known.find('node', word)) return { id: word, fresh: false };
    const [one, other] = this.byName.get(plain(word)) ?? this.byCase.get(plain(word)) ?? [];
    if (other !== undefined) return { fault: `\`${word}\` is the name of ${one} and ${other}, expected the id of one of them` };
    if (one !== undefined) return { id: one, fresh: false };
    const id = this.fresh.get(plain(word)) ?? idOf(word);
    if (!ID_PATTERN.test(id)) return { fault: `\`${word}\` cannot be made into an ID, expected letters or digits` };
    const taken = this.known.taken('node', id);
    if (taken !== undefined && taken !== 'node') {
      return { fault: `\`${id}\` is the id of a ${taken}, expected a node: give the connection an id of its own, as ${id}/1` };
    }
    this.fresh.set(plain(word), id);
    return { id, ...(id === word ? {} : { name: word }), fresh: true };
  }
}

const plain = (word: string): string => word.trim().replace(/\s+/gu, ' ').toLowerCase();

/** `Bay light, left` as `BAY-LIGHT-LEFT`; what is an id already stays one. */
const idOf = (word: string): string =>
  ID_PATTERN.test(word)
    ? word
    : word
        .toUpperCase()
        .replace(/[^\p{L}\p{N}./_-]+/gu, '-')
        .replace(/^-+|-+$/gu, '')
        .slice(0, 80);

function put(map: Map<string, string[]>, word: string, id: string): void {
  map.set(plain(word), [...(map.get(plain(word)) ?? []), id]);
}
