import type { Node, YAMLSeq } from 'yaml';
import type { Path } from '../../source/source.js';
import { setValue, valueAt } from '../change.js';
import { sameTyped } from '../same.js';
import { Splices, wireRootOf } from '../splices.js';
import { type Data, isData, item } from '../yaml-text.js';
import { type MergeBlock, type MergeLeaf, type MergePart, roleWithin, treeOf } from './tree.js';
import { mergeValues, type ValueClash } from './values.js';

/** A question that only a person can answer: what of one record is true. */
export interface MergeClash {
  /** The record’s id, or the key. */
  readonly name: string;
  /** The fields that differ; of a record that one side took away none. */
  readonly fields: readonly ValueClash[];
  /** Which side took it away, where one did. */
  readonly gone?: 'ours' | 'theirs';
}

export interface Merged {
  readonly text: string;
  readonly clashes: readonly MergeClash[];
}

export interface MergeSides {
  readonly base: string;
  readonly ours: string;
  readonly theirs: string;
}

/** How the two sides are called in the marked lines. */
export interface SideNames {
  readonly ours: string;
  readonly theirs: string;
}

/**
 * Merges a record file by id and field. What only one side changed is taken; where both changed the same field otherwise, both stand
 * between marked lines around that record alone. Undefined where the file cannot be taken apart, or what came out does not read as it
 * was meant: then it is for a merge by lines. Text has `\n` as line end and no byte order mark.
 */
export function mergeRecords(path: string, sides: MergeSides, names: SideNames): Merged | undefined {
  const { base, ours, theirs } = sides;
  if (ours === theirs || base === theirs) return { text: ours, clashes: [] };
  if (base === ours) return { text: theirs, clashes: [] };
  const role = roleWithin(path);
  const [before, o, t] = [base, ours, theirs].map((text) => role && treeOf(role, text));
  // Both began the file: what each has in it was added.
  const b = o && base.trim() === '' ? emptied(o) : before;
  if (!role || !b || !o || !t) return undefined;
  const merger = new Merger(names);
  // Under other units every bare number of the other side would mean something else.
  const [was, here, coming] = [b, o, t].map(({ parts }) => parts.find(({ key }) => key === 'units')?.data);
  if (!sameTyped(here, coming) || (base.trim() !== '' && !sameTyped(was, here)))
    return {
      text: merger.marked(ours, theirs, 'units'),
      clashes: [{ name: 'units', fields: [{ path: [], base: was, ours: here, theirs: coming }] }],
    };
  const text = merger.block(b, o, t);
  if (text === undefined) return undefined;
  if (merger.clashes.length === 0 && !merger.reads(treeOf(role, text))) return undefined;
  return { text, clashes: merger.clashes };
}

class Merger {
  readonly clashes: MergeClash[] = [];
  /** What each part must read as, by the way to it. */
  private readonly meant = new Map<string, unknown>();

  constructor(private readonly names: SideNames) {}

  /** True where every part reads as it was meant, and there is no other. */
  reads(tree: MergeBlock | undefined): boolean {
    const found = new Map<string, unknown>();
    const walk = (part: MergePart, way: string): void => {
      if (part.leaf) found.set(`${way}/${part.key}`, part.data);
      else for (const inner of part.parts) walk(inner, `${way}/${part.key}`);
    };
    if (!tree) return this.meant.size === 0;
    walk(tree, '');
    return (
      found.size === this.meant.size && [...this.meant].every(([way, data]) => found.has(way) && sameTyped(found.get(way), data))
    );
  }

  /** Text of a block of which each side has a form; undefined where its own lines cannot be merged. */
  block(b: MergeBlock, o: MergeBlock, t: MergeBlock, way = ''): string | undefined {
    const head = linesOf(b.head, o.head, t.head);
    const tail = linesOf(b.tail, o.tail, t.tail);
    if (head === undefined || tail === undefined || o.of !== t.of) return undefined;
    if (o.indent !== t.indent && o.parts.length > 0 && t.parts.length > 0) return undefined;
    const here = `${way}/${o.key}`;
    const [base, ours, theirs] = [byKey(b), byKey(o), byKey(t)];
    const parts: string[] = [];
    for (const part of this.ordered(o, t, base)) {
      const text = this.part(base.get(part.key), ours.get(part.key), theirs.get(part.key), here);
      if (text === undefined) return undefined;
      parts.push(text);
    }
    return head + joined(parts) + tail;
  }

  /** Ours in their order; what theirs added, behind what stands before it there, and behind what ours added in the same place. */
  private ordered(o: MergeBlock, t: MergeBlock, base: ReadonlyMap<string, MergePart>): readonly MergePart[] {
    const order = [...o.parts];
    const ours = byKey(o);
    let before: string | undefined;
    for (const part of t.parts) {
      if (!ours.has(part.key)) {
        let at = before === undefined ? 0 : order.findIndex(({ key }) => key === before) + 1;
        while (at < order.length && ours.has((order[at] as MergePart).key) && !base.has((order[at] as MergePart).key)) at++;
        order.splice(at, 0, part);
      }
      before = part.key;
    }
    return order;
  }

  private part(b: MergePart | undefined, o: MergePart | undefined, t: MergePart | undefined, way: string): string | undefined {
    if (o && t) {
      if (o.text === t.text || b?.text === t.text) return this.keep(o, way);
      if (b && b.text === o.text) return this.keep(t, way);
      if (!o.leaf && !t.leaf) return this.block(b && !b.leaf ? b : emptied(o), o, t, way);
      return this.leaf(b, o, t, way);
    }
    const left = o ?? t;
    if (left === undefined) return '';
    // One side took it away, or one side added it.
    if (b === undefined) return this.keep(left, way);
    if (sameTyped(b.data, left.data)) return '';
    this.clashes.push({ name: left.name, fields: [], gone: o ? 'theirs' : 'ours' });
    return this.marked(o?.text ?? '', t?.text ?? '', left.name);
  }

  private keep(part: MergePart, way: string): string {
    if (part.leaf) this.meant.set(`${way}/${part.key}`, part.data);
    else for (const inner of part.parts) this.keep(inner, `${way}/${part.key}`);
    return part.text;
  }

  private leaf(b: MergePart | undefined, o: MergePart, t: MergePart, way: string): string | undefined {
    if (!o.leaf || !t.leaf) return undefined;
    const base = b?.leaf === false ? undefined : b;
    const { value, clashes } = mergeValues(o.kind, { base: base?.data, ours: o.data, theirs: t.data });
    const text = clashes.length === 0 ? rewritten(base, o, t, value) : undefined;
    if (text !== undefined) {
      this.meant.set(`${way}/${o.key}`, value);
      return text;
    }
    this.clashes.push({ name: o.name, fields: clashes });
    return this.marked(o.text, t.text, o.name);
  }

  marked(ours: string, theirs: string, name: string): string {
    const line = (text: string): string => (text === '' || text.endsWith('\n') ? text : `${text}\n`);
    return `<<<<<<< ${name}: ${this.names.ours}\n${line(ours)}=======\n${line(theirs)}>>>>>>> ${name}: ${this.names.theirs}\n`;
  }
}

/** Parts begin on a line of their own, also where the last of a file had no line end. */
const joined = (parts: readonly string[]): string =>
  parts.map((text, i) => (i + 1 < parts.length && text !== '' && !text.endsWith('\n') ? `${text}\n` : text)).join('');

const byKey = ({ parts }: MergeBlock): ReadonlyMap<string, MergePart> => new Map(parts.map((part) => [part.key, part]));

/** Both sides began the block by themselves: what each has in it was added. */
const emptied = (block: MergeBlock): MergeBlock => ({ ...block, parts: [] });

/** Lines that have no name: one side’s where only that changed them. */
function linesOf(base: string, ours: string, theirs: string): string | undefined {
  if (ours === theirs || base === theirs) return ours;
  return base === ours ? theirs : undefined;
}

/** A record of which both changed something: the text of the side whose comments changed, with the other’s fields. */
function rewritten(b: MergeLeaf | undefined, o: MergeLeaf, t: MergeLeaf, value: unknown): string | undefined {
  const [base, ours, theirs] = [commentsIn(b?.text ?? ''), commentsIn(o.text), commentsIn(t.text)];
  const onto = ours === theirs || theirs === base ? o : ours === base ? t : undefined;
  if (onto === undefined) return undefined;
  return sameTyped(onto.data, value) ? onto.text : withFields(onto, value);
}

/** What is behind a `#` that may begin a comment: more than comments, never less. */
const commentsIn = (text: string): string => [...text.matchAll(/(?:^|\s)#.*$/gmu)].map(([one]) => one.trim()).join('\n');

function withFields({ text, data, key, kind }: MergeLeaf, value: unknown): string | undefined {
  const gone = (a: unknown, b: unknown): boolean =>
    isData(a) && isData(b) && Object.keys(a).some((one) => b[one] === undefined || gone(a[one], b[one]));
  if (gone(data, value)) return kind !== undefined && commentsIn(text) === '' ? anew(text, value) : undefined;
  try {
    const root = wireRootOf('', text);
    if (root === null) return undefined;
    const splices = new Splices(text);
    const [record, at] = kind === undefined ? [root, [key]] : [(root as YAMLSeq<Node>).items[0] as Node, []];
    for (const path of changedPaths(data, value, [])) setValue(splices, record, [...at, ...path], valueAt(value, path));
    return splices.apply();
  } catch {
    // A form that cannot be changed without loss.
    return undefined;
  }
}

function changedPaths(old: unknown, now: unknown, path: Path): readonly Path[] {
  if (sameTyped(old, now)) return [];
  if (isData(old) && isData(now)) return Object.keys(now).flatMap((key) => changedPaths(old[key], now[key], [...path, key]));
  return [path];
}

/** The record typed anew, where a field was taken away; it has no comment that could be lost. */
function anew(text: string, value: unknown): string {
  const [, blank = '', indent = ''] = /^(\s*\n)?( *)- /u.exec(text) ?? [];
  return blank + item(value as Data, /^\s*- *\{/u.test(text) ? 'flow' : 'block', indent);
}
