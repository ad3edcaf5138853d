import { isAlias, isMap, isScalar, isSeq, type Node, type Pair, type YAMLMap, type YAMLSeq } from 'yaml';
import type { Path } from '../source/source.js';
import { UserError } from '../user-error.js';
import { endOf, isBlank, type Splices, startOf } from './splices.js';
import { type Data, field, flow, isData, YAML_WIDTH } from './yaml-text.js';

/** Puts a value at a path of a typed record (`['inspections', 0, 'by']`), or in place of the one there. The rest stays as typed. */
export function setValue(splices: Splices, record: Node, path: Path, value: unknown): void {
  const [step, ...rest] = path as readonly [string | number, ...Path];
  if (isMap(record)) setInMap(splices, record, String(step), rest, value);
  else if (isSeq(record)) setInList(splices, record, Number(step), rest, value);
  else throw new UserError(`There is a value instead of a block for \`${path.join('.')}\`: change it by hand`);
}

function setInMap(splices: Splices, map: YAMLMap, key: string, rest: Path, value: unknown): void {
  const pair = (map.items as Pair<Node, Node | null>[]).find((one) => isScalar(one.key) && one.key.value === key);
  if (pair === undefined) addPair(splices, map, key, wrapYaml(rest, value));
  else if (pair.value === null || isBlank(pair.value)) {
    splices.insert(splices.old.indexOf(':', endOf(pair.key)) + 1, ` ${flow(wrapYaml(rest, value))}`);
  } else setAt(splices, pair.value, rest, value);
}

function setInList(splices: Splices, list: YAMLSeq, index: number, rest: Path, value: unknown): void {
  const node = list.items[index] as Node | undefined;
  if (node !== undefined) {
    setAt(splices, node, rest, value);
    return;
  }
  const last = list.items.at(-1) as Node | undefined;
  const text = flow(wrapYaml(rest, value));
  if (list.flow || !last) {
    const at = last ? splices.trimmed(endOf(last)) : startOf(list) + 1;
    splices.insert(at, last || splices.insertedAt(at) !== '' ? `, ${text}` : text);
  } else splices.insert(splices.lineEnd(endOf(last)), `${' '.repeat(splices.column(startOf(list)))}- ${text}\n`);
}

function setAt(splices: Splices, node: Node, rest: Path, value: unknown): void {
  if (rest.length === 0) splices.replace(startOf(node), splices.trimmed(endOf(node)), flow(value));
  else if (isAlias(node)) {
    throw new UserError(`\`*${node.source}\` refers to a block that several records share: change it by hand`);
  } else if (isScalar(node)) splices.replace(startOf(node), splices.trimmed(endOf(node)), flow(wrapYaml(rest, value)));
  else setValue(splices, node, rest, value);
}

function addPair(splices: Splices, map: YAMLMap, key: string, value: unknown): void {
  const last = (map.items as Pair<Node, Node | null>[]).at(-1);
  if (!map.flow && last) {
    const column = splices.column(startOf((map.items[0] as Pair<Node>).key));
    splices.insert(
      splices.lineEnd(endOf(last.value ?? last.key)),
      `${' '.repeat(column)}${field(key, value, ' '.repeat(column + 2))}\n`,
    );
    return;
  }
  const at = last ? splices.trimmed(endOf(last.value ?? last.key)) : startOf(map) + 1;
  const text = `${flow(key)}: ${flow(value)}`;
  const before = splices.insertedAt(at);
  const filled = before.includes('\n') ? before.length - before.lastIndexOf('\n') : splices.column(at) + before.length;
  const gap =
    !last && before === '' ? '' : filled + text.length > YAML_WIDTH ? `,\n${' '.repeat(splices.column(startOf(map)) + 1)}` : ', ';
  splices.insert(at, gap + text);
}

/** `['method']` and `screws` as `{method: screws}`. */
function wrapYaml(path: Path, value: unknown): unknown {
  return path.reduceRight<unknown>((inner, step) => (typeof step === 'number' ? [inner] : { [step]: inner }), value);
}

/** A record with a value put at a path, as plain data: what {@link setValue} does to the text. */
export function withValue(data: unknown, path: Path, value: unknown): unknown {
  const [step, ...rest] = path;
  if (step === undefined) return value;
  if (typeof step === 'number') {
    const list = Array.isArray(data) ? [...data] : [];
    list[Math.min(step, list.length)] = withValue(list[step], rest, value);
    return list;
  }
  const map: Data = isData(data) ? data : {};
  return { ...map, [step]: withValue(map[step], rest, value) };
}

export function valueAt(data: unknown, path: Path): unknown {
  return path.reduce<unknown>(
    (at, step) => (typeof at === 'object' && at !== null ? (at as Record<string | number, unknown>)[step] : undefined),
    data,
  );
}
