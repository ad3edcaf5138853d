/** Writes API.md: what `index.ts` gives another program, in its order, each with its docstring and its type as the compiler wrote it. */
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseSync } from 'rolldown/experimental';

/** One thing that may be imported by its name. */
export interface ApiEntry {
  readonly name: string;
  /** The module that declares it, from the root of the built program. */
  readonly file: string;
  readonly doc: string;
  readonly text: string;
}

interface Declared extends ApiEntry {
  readonly start: number;
}

/** Everything exported by `file` of the folder of built declarations, re-exports followed. Needs `npm run build`. */
export function apiOf(folder: string, file = 'index.d.ts'): readonly ApiEntry[] {
  const source = readFileSync(path.join(folder, file), 'utf8');
  const { program } = parseSync(file, source);
  const own = declaredIn(file, source);
  const entries: ApiEntry[] = [];
  for (const statement of program.body) {
    if (statement.type === 'ExportAllDeclaration') {
      const all = apiOf(folder, beside(file, statement.source.value));
      entries.push(...(statement.exportKind === 'type' ? all.filter(isType) : all));
    }
    if (statement.type !== 'ExportNamedDeclaration') continue;
    if (statement.declaration) entries.push(...own.filter(({ start }) => start === statement.start));
    const there = statement.source ? apiOf(folder, beside(file, statement.source.value)) : own;
    for (const { local, exported } of statement.specifiers) {
      const found = there.find(({ name }) => name === nameOf(local));
      if (found) entries.push({ ...found, name: nameOf(exported) });
    }
  }
  // Overloads stand one under the other, each in its own statement.
  const seen = new Set<string>();
  return entries.filter(
    ({ name, file: from, text }) => !seen.has(`${from} ${name} ${text}`) && seen.add(`${from} ${name} ${text}`),
  );
}

const isType = ({ text }: ApiEntry): boolean => /^(?:interface|type|class|enum) /u.test(text);

type Named = { readonly type: string; readonly name?: string; readonly value?: string };

const nameOf = (node: unknown): string => (node as Named).name ?? (node as Named).value ?? '';

const beside = (file: string, to: string): string => path.posix.join(path.posix.dirname(file), to.replace(/\.js$/u, '.d.ts'));

function declaredIn(file: string, source: string): readonly Declared[] {
  const { program, comments } = parseSync(file, source);
  return program.body.flatMap((statement) => {
    const exported = statement.type === 'ExportNamedDeclaration' ? statement.declaration : statement;
    if (!exported) return [];
    const before = comments.filter(
      ({ end, value }) => value.startsWith('*') && source.slice(end, statement.start).trim() === '' && end <= statement.start,
    );
    const doc = textOf(before.at(-1)?.value ?? '');
    const text = source.slice(statement.start, statement.end).replace(/^export (?:declare )?/u, '');
    return namesOf(exported).map((name) => ({ name, file, doc, text, start: statement.start }));
  });
}

function namesOf(declaration: unknown): readonly string[] {
  const { id, declarations } = declaration as { id?: unknown; declarations?: readonly { readonly id: unknown }[] };
  return declarations ? declarations.map((one) => nameOf(one.id)) : id ? [nameOf(id)] : [];
}

/** A docstring without its stars, `{@link X}` as `X`, tags as sentences of their own. */
const textOf = (comment: string): string =>
  comment
    .split('\n')
    .map((line) => line.replace(/^\s*\*+ ?/u, '').trimEnd())
    .join('\n')
    .replaceAll(/\{@link ([^}]+)\}/gu, '`$1`')
    .replaceAll(/@param (\S+)/gu, '\n- `$1`:')
    .replaceAll(/@returns /gu, '\n- gives ')
    .replaceAll(/@throws \{(\w+)\}/gu, '\n- throws `$1`')
    .trim();

/** The page: modules in the order in which the index names them. */
export function apiPage(entries: readonly ApiEntry[], introduction: string): string {
  const parts = [`# shellbook as a library\n\n${introduction}\n`];
  let module = '';
  for (const { name, file, doc, text } of entries) {
    if (file !== module) parts.push(`## ${file.replace(/(?:\/(?:index|types))?\.d\.ts$/u, '')}\n`);
    module = file;
    parts.push(`### ${name}\n\n${doc === '' ? '' : `${doc}\n\n`}\`\`\`ts\n${text}\n\`\`\`\n`);
  }
  return parts.join('\n');
}

const root = fileURLToPath(new URL('../', import.meta.url));

/** What stands above the first line of the index, for whoever imports it. */
export function introductionOf(folder: string): string {
  const source = readFileSync(path.join(folder, 'index.d.ts'), 'utf8');
  return textOf(parseSync('index.d.ts', source).comments[0]?.value ?? '');
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const dist = path.join(root, 'dist');
  writeFileSync(path.join(root, 'API.md'), apiPage(apiOf(dist), introductionOf(dist)));
}
