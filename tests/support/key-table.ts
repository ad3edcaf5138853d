import type { Fields } from '../../src/records/field.js';
import { KIND_NAMES, kindOf } from '../../src/records/kinds.js';
import type { KindName } from '../../src/records/names.js';
import { eachField } from '../../src/records/references.js';
import { COMMON } from '../../src/records/shared.js';

const FILES: Readonly<Partial<Record<KindName, string>>> = {
  shop: 'shop.yaml',
  shell: 'shell.yaml',
  chassis: '`chassis` of shell.yaml',
  datum: '`datum` of shell.yaml',
  bare: '`bare` of `chassis`',
  service: 'the head of services/*.yaml',
};

/** Every key of every kind of record with its help, as Markdown. Keys in bold must be typed. */
export function keyTable(): string {
  const kinds = KIND_NAMES.map((name) => section(name, ownFields(name)));
  return [table('Every record of a list', COMMON), ...kinds].join('\n');
}

function section(name: KindName, fields: Fields): string {
  const { variants } = kindOf(name);
  const forms = Object.entries(variants?.forms ?? {}).map(([word, own]) => table(`${name}, ${variants?.key}: ${word}`, own));
  return [table(`${name} (${placeOf(name)})`, fields), ...forms].join('\n');
}

function placeOf(name: KindName): string {
  const { home } = kindOf(name);
  if (home.in === 'part') return FILES[name] ?? name;
  if (home.in === 'head') return `${home.path.map((key) => `\`${key}\``).join(' › ')} of shell.yaml`;
  if (home.in === 'service') return `\`${home.list}\` of services/*.yaml`;
  if (home.list === 'rules') return 'library/rules/*.yaml';
  return home.in === 'library' ? `library/${home.list}.yaml` : `${home.list === 'photos' ? 'photos/' : ''}${home.list}*.yaml`;
}

const ownFields = (name: KindName): Fields =>
  Object.fromEntries(Object.entries(kindOf(name).fields).filter(([key, field]) => (COMMON as Fields)[key] !== field));

function table(title: string, fields: Fields): string {
  const rows: string[] = [];
  eachField(fields, ({ traits }, path) => {
    const key = path
      .filter((step) => step !== '*')
      .join('.')
      .replaceAll('{}', '…');
    const last = path.at(-1);
    if (traits.help === '' || last === '*' || last === '{}') return;
    rows.push(`| ${traits.presence === 'required' ? `**${key}**` : key} | ${traits.help.replaceAll('|', '\\|')} |`);
  });
  return rows.length === 0 ? '' : `\n### ${title}\n\n| key | |\n| --- | --- |\n${rows.join('\n')}\n`;
}
