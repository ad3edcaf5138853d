import { isAlias, isMap, isScalar, isSeq, type Node, type Pair, type YAMLSeq } from 'yaml';
import type { Place } from '../finding.js';
import type { SourceDocument } from './document.js';
import { rangeOf } from './plain.js';

export type Path = readonly (string | number)[];

/** A way down from a record: its key first, where its keys are known. */
export type PathTo<Key extends string> = string extends Key
  ? readonly (string | number)[]
  : readonly [] | readonly [Key, ...(readonly (string | number)[])];

/** Where a record was typed. Made once by the reader, so that no rule ever searches for a place to point at. */
export interface Source<Key extends string = string> {
  readonly file: string;
  /** The place of a field (`place('axles', 0, 'gawr')`); of its nearest known parent where that field was not typed. */
  place(...path: PathTo<Key>): Place;
}

/** Where the path led, as far as it could be followed. */
interface Spot {
  readonly key?: Node;
  readonly value: Node | null;
  /** The whole path was typed. */
  readonly whole: boolean;
}

/**
 * Source of one record. A list's item is named by its place in the list or by its id (`place('chassis', 'axles', 'tag', 'gawr')`).
 * Finds places by walking the file's nodes again, only when somebody asks.
 */
export class NodeSource implements Source {
  constructor(
    private readonly document: SourceDocument,
    private readonly own: Node | null | (() => Node | null),
  ) {}

  /** The record's own node. */
  get node(): Node | null {
    return typeof this.own === 'function' ? this.own() : this.own;
  }

  get file(): string {
    return this.document.file;
  }

  /** Of the value; of the key where the value is a block of several lines or was not typed. */
  place(...path: Path): Place {
    const spot = this.follow(path);
    if (spot.value === this.resolve(this.node)) return this.ownPlace();
    return this.ofSpot(spot);
  }

  /** Of the key itself, for keys that should not be there. */
  placeOfKey(...path: Path): Place {
    const spot = this.follow(path);
    if (spot.whole && spot.key) return this.document.place(...rangeOf(spot.key));
    return this.place(...path);
  }

  /** A record is blamed at its id, or at the first words of it. */
  private ownPlace(): Place {
    for (const name of ['id', 'shell', 'service']) {
      const spot = this.follow([name]);
      if (spot.whole && isScalar(spot.value)) return this.ofSpot(spot);
    }
    return this.firstWords(this.node);
  }

  private ofSpot(spot: Spot): Place {
    const { key, value } = spot;
    if (value !== null && (isScalar(value) || isAlias(value)) && rangeOf(value)[1] > rangeOf(value)[0])
      return this.rangePlace(value);
    if (value !== null && (isMap(value) || isSeq(value)) && value.flow) {
      const place = this.rangePlace(value);
      if (place.line === place.endLine) return place;
    }
    return key ? this.rangePlace(key) : this.firstWords(value);
  }

  private firstWords(node: Node | null): Place {
    if (node === null) return this.document.place(0, 1);
    if (isMap(node) && !node.flow) {
      const first = node.items[0]?.key;
      if (first) return this.rangePlace(first as Node);
    }
    const [start] = rangeOf(node);
    return isScalar(node) ? this.rangePlace(node) : this.document.place(start, start + 1);
  }

  private rangePlace(node: Node): Place {
    return this.document.place(...rangeOf(node));
  }

  private follow(path: Path): Spot {
    let key: Node | undefined;
    let value = this.resolve(this.node);
    for (const step of path) {
      if (isMap(value)) {
        const pair = (value.items as Pair<Node, Node | null>[]).find(
          (item) => isScalar(item.key) && item.key.value === String(step),
        );
        if (!pair) return { key, value, whole: false };
        key = pair.key;
        value = this.resolve(pair.value);
      } else if (isSeq(value)) {
        const item = typeof step === 'number' ? (value.items[step] as Node | undefined) : this.itemWithId(value, step);
        if (item === undefined) return { key, value, whole: false };
        key = undefined;
        value = this.resolve(item);
      } else return { key, value, whole: false };
    }
    return { key, value, whole: true };
  }

  private itemWithId(list: YAMLSeq, id: string): Node | undefined {
    const hasId = (pair: Pair): boolean =>
      isScalar(pair.key) && pair.key.value === 'id' && isScalar(pair.value) && pair.value.value === id;
    return (list.items as Node[]).find((item) => {
      const record = this.resolve(item);
      return isMap(record) && record.items.some(hasId);
    });
  }

  private resolve(node: Node | null): Node | null {
    let plain = node;
    // A cycle of aliases was refused when the file was read.
    while (plain !== null && isAlias(plain)) plain = this.document.anchors.get(plain.source) ?? null;
    return plain;
  }
}
