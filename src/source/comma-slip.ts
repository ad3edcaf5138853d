import { isScalar, type Node, type Pair, type Scalar } from 'yaml';
import { shown } from './shown.js';

/** A comma within a number that YAML took for the end of a value. */
export interface CommaSlip {
  /** What was meant, for the checks that follow. */
  readonly repaired: string;
  /** How many entries the slip made too many. */
  readonly swallowed: number;
  /** Offset of its end. */
  readonly end: number;
  message(key?: string): string;
}

const PLAIN_NUMBER = /^[+-]?\d+$/u;
const GROUP = /^\d{3}(?:\.\d+)?(?!\d)/u;
const BEGINS_WITH_DIGIT = /^\d+(?:\s|$|[a-z"'%°])/iu;

/**
 * Recognises `{gawr: 14,600 lb}` (`gawr: 14` and a key `600 lb` without value) and `[1,905 mm, 0, 3 mm]`: a whole number, a comma
 * with nothing after it, then digits. In a list the digits must have a unit, since `[100,200,300]` may be three numbers.
 */
export function slipAfter(
  text: string,
  value: Node,
  items: readonly (Node | Pair<Node, Node | null>)[],
  index: number,
): CommaSlip | undefined {
  const head = plainText(value);
  if (head === undefined || !PLAIN_NUMBER.test(head)) return undefined;
  const inMapping = 'key' in (items[index] as object);
  const parts = [head];
  let end = value.range?.[1] ?? 0;
  for (let i = index + 1; i < items.length; i++) {
    const part = loosePart(items[i] as Node | Pair<Node, Node | null>);
    const gap = part && text.slice(end, part.range?.[0]);
    // In a mapping a key of digits without value is never meant, whatever space a formatter put before it.
    if (!part || !(inMapping ? /^, *$/u : /^,$/u).test(gap ?? '')) break;
    const word = plainText(part) as string;
    if (!BEGINS_WITH_DIGIT.test(word)) break;
    parts.push(word);
    end = part.range?.[1] ?? end;
    if (!PLAIN_NUMBER.test(word)) break;
  }
  const last = parts.at(-1) as string;
  const thousands = /^[+-]?\d{1,3}$/u.test(head) && parts.slice(1).every((part) => GROUP.test(part));
  if (parts.length === 1 || (!inMapping && (!thousands || PLAIN_NUMBER.test(last)))) return undefined;
  return slip(parts, end, thousands);
}

function slip(parts: readonly string[], end: number, thousands: boolean): CommaSlip {
  const typed = parts.join(',');
  const repaired = thousands ? parts.join('') : parts.join('.');
  const advice = thousands ? `write \`"${shown(typed)}"\` in quotes or \`${shown(repaired)}\`` : `write \`${shown(repaired)}\``;
  return {
    repaired,
    swallowed: parts.length - 1,
    end,
    message: (key) =>
      `Found a comma in \`${shown(typed)}\`${key === undefined ? '' : ` for \`${shown(key)}\``}: ` +
      `inside {…} and […] YAML ends a value at a comma, ${advice}`,
  };
}

function plainText(node: Node): string | undefined {
  if (!isScalar(node) || (node as Scalar).type !== 'PLAIN') return undefined;
  return typeof node.value === 'string' ? node.value : undefined;
}

/** An entry that may be the tail of a number: a list's plain scalar, or a mapping's key to which no value was typed. */
function loosePart(item: Node | Pair<Node, Node | null>): Node | undefined {
  if (!('key' in item)) return plainText(item) === undefined ? undefined : item;
  const bare = item.value === null || (isScalar(item.value) && (item.value.value === '' || item.value.value === null));
  return bare && plainText(item.key) !== undefined ? item.key : undefined;
}
