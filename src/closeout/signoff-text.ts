import { isMap, isSeq, type Node, type Pair, parseDocument, stringify } from 'yaml';
import { UserError } from '../user-error.js';

export interface NewSignoff {
  readonly stage: string;
  readonly role: string;
  readonly by: string;
  readonly date: string;
  readonly digest: string;
}

/**
 * Text of a sign-off file with one more at the end of its list; every line that was there stays as it was. Throws {@link UserError}
 * where the file is no list that can be added to.
 */
export function withSignoff(old: string | null, { stage, role, by, date, digest }: NewSignoff): string {
  const fields = Object.entries({ stage, role, by, date }).map(([key, value]) => `${key}: ${flow(value)}`);
  const record = `- {${fields.join(', ')},\n   digest: ${digest}}\n`;
  const text = old ?? '';
  const document = parseDocument(text, { schema: 'failsafe', prettyErrors: false, logLevel: 'silent' });
  if (document.errors.length > 0) throw cannotAdd('its YAML is broken: see shellbook check');
  const root = document.contents as Node | null;
  const list = isMap(root) ? listIn(root.items as Pair<Node, Node | null>[]) : root;
  if (list === null || list === undefined || !isSeq(list)) {
    if (isMap(root) || (root !== null && text.trim() !== '' && !isBlank(root))) throw cannotAdd('it is not a list');
    return ended(text) + record;
  }
  if (list.flow) throw cannotAdd('its list stands in [ ]: write one `- ` line for each');
  const first = list.items[0] as Node | undefined;
  const at = first?.range?.[0] ?? 0;
  const indent = ' '.repeat(Math.max(0, at - (text.lastIndexOf('\n', at - 1) + 1) - 2));
  // After the last record itself: comments below it stay below.
  const end = (list.items.at(-1) as Node).range?.[1] ?? text.length;
  const line = text.indexOf('\n', end - 1) + 1;
  const [before, after] = line === 0 ? [text, ''] : [text.slice(0, line), text.slice(line)];
  return ended(before) + record.replace(/^(?=.)/gmu, indent) + after;
}

const isBlank = (node: Node): boolean =>
  (node as { readonly value?: unknown }).value === '' || (node as { readonly value?: unknown }).value === null;

const listIn = (items: readonly Pair<Node, Node | null>[]): Node | null | undefined =>
  items.find(({ key }) => (key as { readonly value?: unknown }).value === 'signoffs')?.value;

const ended = (text: string): string => (text === '' || text.endsWith('\n') ? text : `${text}\n`);

/** As it may stand within `{…}`. */
const flow = (value: string): string =>
  /^[\p{L}\p{N}][\p{L}\p{N} ._/-]*$/u.test(value)
    ? value.trim()
    : stringify(value, { defaultStringType: 'QUOTE_DOUBLE', lineWidth: 0 }).trim();

const cannotAdd = (why: string): UserError =>
  new UserError(`Nothing can be added to signoffs.yaml: ${why}. Nothing was written.`);
