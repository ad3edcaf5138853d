import { type Node, parseDocument, type YAMLError } from 'yaml';
import type { Finding, Place } from '../finding.js';
import { type ConflictBlock, conflictsIn, idsInConflict } from './conflicts.js';
import { Lines } from './lines.js';
import { OPTIONS, parseInPieces, quickList } from './parse.js';
import { Plain } from './plain.js';
import { mayBePlain, NOT_PLAIN, quickDocument } from './quick.js';
import { shown } from './shown.js';

/** One file read: its plain data, and what it takes to find a place again. */
export interface SourceDocument {
  readonly file: string;
  /** As plain data: numbers and yes/no only where nothing of the typed text is lost by it. */
  readonly data: unknown;
  /** Of what is written plainly it is made when somebody asks. */
  readonly root: Node | null;
  readonly findings: readonly Finding[];
  /** The syntax is broken: nothing in `data` can be trusted. */
  readonly broken: boolean;
  /** Written plainly throughout: no alias stands for a list. */
  readonly isPlain: boolean;
  /** Offsets of faults found within records: a record around one is not whole. */
  readonly faults: readonly number[];
  /** Some mapping has keys without a value or of the shop's own (`x-…`). */
  readonly hasBlanks: boolean;
  readonly anchors: ReadonlyMap<string, Node>;
  place(start: number, end: number): Place;
}

/** Beyond this many, errors of syntax only repeat the first. */
const MOST_ERRORS = 10;

/**
 * Reads YAML 1.2 without schema: every scalar is text until a field says what it should be. Custom tags, merge keys and
 * directives have no meaning in a record. Never throws.
 */
export function readDocument(file: string, text: string): SourceDocument {
  const source = text.startsWith('\uFEFF') ? text.slice(1) : text;
  const lines = new Lines(file, source);
  const place = (start: number, end: number): Place => lines.place(start, Math.min(end, source.length + 1));
  const say = (message: string, start: number, end: number): Finding => yamlFinding(message, place(start, end));
  const empty = {
    file,
    data: null,
    root: null,
    isPlain: false,
    faults: [],
    hasBlanks: false,
    anchors: new Map<string, Node>(),
    place,
  };
  const whole = (plain: Plain, root: Node | null, data: unknown): SourceDocument => {
    const { findings, broken, faults, hasBlanks, anchors } = plain;
    return { ...empty, data, root, findings, broken, faults, hasBlanks, anchors };
  };
  const conflicts = /^(?:<{7}|>{7})(?: |\r?$)/mu.test(source) ? conflictsIn(source) : [];
  if (conflicts.length > 0)
    return { ...empty, broken: true, findings: conflicts.map((one) => conflictFinding(one, place(one.from, one.from + 7))) };
  const quick = mayBePlain(source) ? quickly(source, place) : undefined;
  // The nodes of a file are only wanted for the places in it.
  if (quick)
    return Object.defineProperty({ ...whole(quick.plain, null, quick.data), isPlain: true }, 'root', {
      get: quick.root,
      enumerable: true,
    });
  let parsed: ReturnType<typeof parseDocument>;
  try {
    const items: unknown[] = [];
    const plain = new Plain(source, place);
    const list = parseInPieces(source, (piece) => {
      for (const item of plain.items(piece)) items.push(item);
    });
    if (list) return whole(plain, list, items);
    parsed = parseDocument(source, OPTIONS);
  } catch {
    return {
      ...empty,
      broken: true,
      findings: [say('This file is nested too deeply to be read, expected a list of records', 0, 1)],
    };
  }
  const errors = oneALine(parsed.errors, place);
  if (errors.length > 0) {
    const findings = errors.slice(0, MOST_ERRORS).map((error) => say(syntaxMessage(error, source), error.pos[0], error.pos[1]));
    return { ...empty, broken: true, findings };
  }
  const plain = new Plain(source, place);
  return whole(plain, parsed.contents, plain.read(parsed.contents));
}

interface QuicklyRead {
  readonly plain: Plain;
  readonly data: unknown;
  root(): Node | null;
}

/** What is written the plain way, at a fraction of the cost; undefined where it is not. */
function quickly(source: string, place: SourceDocument['place']): QuicklyRead | undefined {
  const plain = new Plain(source, place);
  try {
    const items: unknown[] = [];
    const list = quickList(source, (item) => {
      if ('plain' in item) items.push(item.plain);
      else items.push(...plain.items(item.node));
    });
    if (list) return { plain, data: items, root: () => list };
  } catch {
    return undefined;
  }
  const data = quickDocument(source);
  if (data === NOT_PLAIN) return undefined;
  let read: { readonly node: Node | null } | undefined;
  const root = (): Node | null => {
    read ??= { node: parseDocument(source, OPTIONS).contents };
    return read.node;
  };
  return { plain, data, root };
}

const yamlFinding = (message: string, place: Place): Finding => ({
  rule: 'format.yaml',
  severity: 'error',
  message,
  ids: [],
  place,
});

/** Two people’s forms of one record, which Git could not choose between. */
function conflictFinding(block: ConflictBlock, place: Place): Finding {
  const ids = idsInConflict(block);
  const what =
    ids.length === 0
      ? 'some lines'
      : ids
          .slice(0, 3)
          .map((id) => `\`${shown(id)}\``)
          .join(', ');
  return {
    rule: 'format.conflict',
    severity: 'error',
    message: `Two people changed ${what}, and both versions are here between the marked lines from \`<<<<<<<\` to \`>>>>>>>\`, expected one: \`shellbook merge\` asks which is true, or delete the wrong form and the three marked lines by hand`,
    ids,
    place,
  };
}

/** One slip often gives several errors in its line: the first says it. */
function oneALine(errors: readonly YAMLError[], place: (start: number, end: number) => Place): readonly YAMLError[] {
  const seen = new Set<number>();
  return errors.filter((error) => {
    const { line } = place(error.pos[0], error.pos[1]);
    return !seen.has(line) && seen.add(line);
  });
}

/** What the parser's codes mean to somebody who types records. */
const HINTS: Readonly<Record<string, string>> = {
  BAD_INDENT: 'The indentation does not fit the lines above it: give every key of one record the same number of spaces',
  TAB_AS_INDENT: 'Found a tab at the start of a line, expected spaces: YAML indents with spaces only',
  MISSING_CHAR: 'A closing sign or a space is missing',
  BAD_ALIAS: 'Found `*` at the start of a value: write it in quotes',
  BLOCK_AS_IMPLICIT_KEY: 'A second `: ` in one line: write the value in quotes, or put the second key on a line of its own',
  BAD_SCALAR_START: 'A value may not start with this sign: write it in quotes',
  MULTIPLE_DOCS: 'Found `---`, expected one document in a file: take the line out, or split the file',
  MULTILINE_IMPLICIT_KEY: 'A comma, a closing sign or `: ` is missing before the end of this line',
  UNEXPECTED_TOKEN: 'Found a sign that does not belong here',
};

function syntaxMessage(error: YAMLError, text: string): string {
  const near = shown(text.slice(error.pos[0], Math.max(error.pos[1], error.pos[0] + 1)).trim() || 'end of line');
  const lineStart = text.lastIndexOf('\n', error.pos[0] - 1) + 1;
  const closing = /must .*end with an? ([}\]])/u.exec(error.message)?.[1];
  const hint =
    text[lineStart] === '\t'
      ? (HINTS.TAB_AS_INDENT as string)
      : closing !== undefined
        ? `A closing \`${closing}\` is missing before this`
        : (HINTS[error.code] ?? 'This is not YAML');
  const said = error.message.replace(/\s+/gu, ' ').trim();
  return `${hint}, near \`${near}\` (the YAML reader says: ${said})`;
}
