import { type Alias, isAlias, isMap, isScalar, isSeq, type Node, type Pair, type Scalar, type YAMLMap, type YAMLSeq } from 'yaml';
import type { Finding, Place } from '../finding.js';
import { slipAfter } from './comma-slip.js';
import { found, shown } from './shown.js';

/** Records are shallow; more than this is an attack or a mishap. */
const DEEPEST = 40;
/** Values that aliases may unfold to, in one file. */
const MOST_UNFOLDED = 10_000;
/** Keys of one block. Each is looked up among all of them. */
const MOST_KEYS = 300;

export const rangeOf = (node: Node): readonly [number, number] => [node.range?.[0] ?? 0, node.range?.[1] ?? 0];

/** From YAML nodes to plain data in one walk, with the findings that only the nodes can show. */
export class Plain {
  readonly findings: Finding[] = [];
  readonly faults: number[] = [];
  readonly anchors = new Map<string, Node>();
  hasBlanks = false;
  broken = false;
  private unfolded = 0;
  private inAlias = 0;

  constructor(
    private readonly text: string,
    private readonly place: (start: number, end: number) => Place,
  ) {}

  read(node: Node | null, depth = 0): unknown {
    if (node === null || this.broken) return null;
    if (this.inAlias > 0 && ++this.unfolded > MOST_UNFOLDED)
      return this.stop('The aliases (`*name`) of this file unfold without end', node);
    if (depth > DEEPEST) return this.stop('This is nested too deeply for a record', node);
    if (isScalar(node)) {
      this.common(node);
      return scalar(node as Scalar<unknown>);
    }
    if (isMap(node)) {
      this.common(node);
      return this.map(node, depth);
    }
    if (isSeq(node)) {
      this.common(node);
      return this.list(node, depth);
    }
    return isAlias(node) ? this.alias(node, depth) : null;
  }

  /** Of a piece of a list that stands at the top. */
  items(piece: YAMLSeq): readonly unknown[] {
    if (this.broken) return [];
    this.common(piece);
    return this.list(piece, 0);
  }

  private map(node: YAMLMap, depth: number): Record<string, unknown> {
    const data: Record<string, unknown> = {};
    const items = node.items as Pair<Node, Node | null>[];
    if (items.length > MOST_KEYS) this.stop(`This block has ${items.length} keys, expected ${MOST_KEYS} at most`, node);
    for (let i = 0; i < items.length && !this.broken; i++) {
      const { key, value } = items[i] as Pair<Node, Node | null>;
      const name = isScalar(key) ? String(key.value ?? '') : undefined;
      if (name === undefined || name === '__proto__') {
        this.fault('format.yaml', `Found ${name ? found(name) : 'list or block'} as a key, expected a word`, key);
        continue;
      }
      if (Object.hasOwn(data, name)) {
        const first = items.find((item) => isScalar(item.key) && item.key.value === name)?.key as Node;
        const related = [{ message: 'First use', place: this.place(...rangeOf(first)) }];
        this.fault(
          'format.duplicate-key',
          `Key \`${shown(name)}\` is here twice in one record, expected it once: take one out`,
          key,
          related,
        );
        continue;
      }
      const slip = node.flow === true && value !== null ? slipAfter(this.text, value, items, i) : undefined;
      if (slip) {
        this.fault('format.comma-slip', slip.message(name), value as Node, undefined, slip.end);
        data[name] = slip.repaired;
        i += slip.swallowed;
        continue;
      }
      const plain = this.read(value ?? null, depth + 1);
      if (plain === null || name.startsWith('x-')) this.hasBlanks = true;
      data[name] = plain;
    }
    return data;
  }

  private list(node: YAMLSeq, depth: number): unknown[] {
    const data: unknown[] = [];
    const items = node.items as Node[];
    for (let i = 0; i < items.length; i++) {
      const item = items[i] as Node;
      const slip = node.flow === true ? slipAfter(this.text, item, items, i) : undefined;
      if (slip) {
        this.fault('format.comma-slip', slip.message(), item, undefined, slip.end);
        data.push(slip.repaired);
        i += slip.swallowed;
      } else data.push(this.read(item, depth + 1));
    }
    return data;
  }

  private alias(node: Alias, depth: number): unknown {
    const target = this.anchors.get(node.source);
    if (!target)
      return this.stop(`Found an alias \`*${shown(node.source)}\`, expected one that is set above it with \`&\``, node);
    this.inAlias++;
    const plain = this.read(target, depth + 1);
    this.inAlias--;
    return plain;
  }

  private common(node: Scalar | YAMLMap | YAMLSeq): void {
    if (node.anchor !== undefined) this.anchors.set(node.anchor, node);
    // Scalars that look like numbers come here by the thousand: nothing but these two looks for each.
    if (node.tag !== undefined && this.inAlias === 0) {
      this.fault('format.yaml', `Found a tag \`${shown(node.tag)}\`, expected plain values: take the tag out`, node);
    }
  }

  private stop(message: string, node: Node): null {
    if (!this.broken) this.fault('format.yaml', message, node);
    this.broken = true;
    return null;
  }

  private fault(rule: string, message: string, node: Node, related?: Finding['related'], until?: number): void {
    const [start, end] = rangeOf(node);
    this.faults.push(start);
    const finding: Finding = { rule, severity: 'error', message, ids: [], place: this.place(start, until ?? end) };
    this.findings.push(related ? { ...finding, related } : finding);
  }
}

/** A number or a yes/no only where it prints back as it was typed: `0447` and `4.50` stay text, so nothing typed is lost. */
function scalar(node: Scalar<unknown>): unknown {
  const text = node.value;
  if (typeof text !== 'string') return text ?? null;
  if (node.type !== 'PLAIN') return text;
  if (text === '' || text === 'null' || text === '~') return null;
  if (text === 'true') return true;
  if (text === 'false') return false;
  const sign = text.charCodeAt(0);
  if ((sign >= 48 && sign <= 57) || sign === 45) {
    const number = Number(text);
    if (Number.isFinite(number) && String(number) === text) return number;
  }
  return text;
}
