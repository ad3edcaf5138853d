import type { Node, YAMLSeq } from 'yaml';
import { isSeq } from 'yaml';
import { type ConflictBlock, conflictsIn } from '../../source/conflicts.js';
import { readDocument } from '../../source/document.js';
import type { Asker } from '../asker.js';
import { setValue, valueAt } from '../change.js';
import { sameTyped } from '../same.js';
import { Splices, wireRootOf } from '../splices.js';
import { flow, isData } from '../yaml-text.js';
import { roleWithin, treeOf } from './tree.js';
import { mergeValues, type ValueClash } from './values.js';

/** Asks about every pair of marked lines in a text, by record and field, and gives the text with the answers. */
export async function settle(file: string, text: string, asker: Asker): Promise<string> {
  let settled = '';
  let at = 0;
  for (const block of conflictsIn(text)) {
    settled += text.slice(at, block.from) + (await answered(file, block, asker));
    at = block.to;
  }
  return settled + text.slice(at);
}

const HERE = 'here';
const COMING = 'coming in';
const BOTH = 'both';

async function answered(file: string, block: ConflictBlock, asker: Asker): Promise<string> {
  const { ours, theirs } = block;
  const differing = await fieldByField(file, block, asker);
  if (differing !== undefined) return differing;
  const shown = (text: string): string => (text.trim() === '' ? '(taken away)' : text.trim().replace(/\s*\n\s*/gu, ' '));
  const chosen = await asker.choose({
    text: `${file}:${block.line}: which is true?`,
    choices: [
      { value: HERE, name: `as it is here: ${shown(ours)}` },
      { value: COMING, name: `as it comes in: ${shown(theirs)}` },
      ...(ours.trim() === '' || theirs.trim() === '' ? [] : [{ value: BOTH, name: 'both, one after the other' }]),
    ],
  });
  return chosen === HERE ? ours : chosen === COMING ? theirs : ours + theirs;
}

/** One record in two forms: each field that differs is a question. Undefined where it is something else. */
async function fieldByField(file: string, { ours, theirs, line }: ConflictBlock, asker: Asker): Promise<string | undefined> {
  const role = roleWithin(file);
  const [mine, yours] = [ours, theirs].map((text) => role && treeOf(role, text));
  const [a, b] = [mine?.parts, yours?.parts];
  const [own, other] = [a?.[0], b?.[0]];
  if (!own?.leaf || !other?.leaf || a?.length !== 1 || b?.length !== 1 || own.key !== other.key) return undefined;
  if (!isData(own.data) || !isData(other.data)) return undefined;
  // Without what it was before, every difference is a question.
  const { clashes } = mergeValues(own.kind, { base: undefined, ours: own.data, theirs: other.data });
  const root = wireRootOf(file, own.text);
  if (!isSeq(root)) return undefined;
  const splices = new Splices(own.text);
  for (const clash of [...clashes, ...onlyIn(own.data, other.data)]) {
    const chosen = await asker.choose({ text: `${file}:${line}: ${own.name}, ${clash.path.join('.')}`, choices: forms(clash) });
    if (chosen === COMING) {
      if (clash.theirs === undefined) return undefined;
      setValue(splices, (root as YAMLSeq<Node>).items[0] as Node, clash.path, valueAt(other.data, clash.path));
    }
  }
  const text = splices.apply();
  return readDocument(file, text).broken ? undefined : text;
}

const forms = ({ ours, theirs }: ValueClash) => [
  { value: HERE, name: `${ours === undefined ? 'leave it out' : flow(ours)}  (here)` },
  { value: COMING, name: `${theirs === undefined ? 'leave it out' : flow(theirs)}  (coming in)` },
];

/** Fields that only the other side has. */
function onlyIn(own: Readonly<Record<string, unknown>>, other: Readonly<Record<string, unknown>>): readonly ValueClash[] {
  return Object.keys(other).flatMap((key) =>
    own[key] === undefined && !sameTyped(own[key], other[key])
      ? [{ path: [key], base: undefined, ours: undefined, theirs: other[key] }]
      : [],
  );
}
