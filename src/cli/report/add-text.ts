import { columnsOf } from '../../entry/columns.js';
import type { RecordDraft } from '../../entry/draft.js';
import type { EntryKind } from '../../entry/homes.js';
import { optionOf } from '../../entry/options.js';
import { type Data, item, type Style } from '../../entry/yaml-text.js';
import type { KindName } from '../../records/index.js';
import { envelope, type Json } from './json.js';
import { paragraph } from './wrap.js';

/** A record as it will stand in its file. */
export const recordText = (data: Data, style: Style): string => item(data, style, '  ').trimEnd();

/** The options of a kind: its fields, those that it must have first. */
export function fieldsText(kind: KindName): string {
  const columns = [...columnsOf(kind)].sort((a, b) => Number(b.required) - Number(a.required));
  const lines = columns.map(({ key, help, required, form }) => {
    const values = form.as === 'choice' ? `: ${form.values.join(' | ')}` : '';
    return paragraph(`${help}${values}${required ? ' (needed)' : ''}`, `  ${`--${optionOf(key)}`.padEnd(26)} `);
  });
  return [`\nFields of a ${kind}:`, ...lines, '  --set key=value            any other, as --set condition.fuel=3/4'].join('\n');
}

export const addJson = (shell: string | null, kind: EntryKind, { id, data, place }: RecordDraft, dryRun: boolean): string =>
  envelope('add', shell, null, { kind, id, file: place.file, dry_run: dryRun, record: data as { readonly [key: string]: Json } });
