/** Plants names in every field of a store that may hold words, by what the fields say of themselves. */
import { isMap, isSeq, parseDocument, type YAMLMap, type YAMLSeq } from 'yaml';
import type { AnyField, Fields } from '../../src/records/field.js';
import { KINDS } from '../../src/records/kinds.js';
import { KIND_IN } from '../../src/records/lists.js';
import { roleOf } from '../../src/store/layout.js';

/** Gives the next text to plant in a field, or undefined where nothing is to be planted there. */
export type Next = (field: 'text' | 'person' | 'person by id', key: string, before: string | undefined) => string | undefined;

/** A copy of the files with `next` planted in every field of text and of persons, typed there or not. */
export function planted(files: Readonly<Record<string, string>>, next: Next): Record<string, string> {
  return Object.fromEntries(
    Object.entries(files).map(([path, text]) => {
      const role = roleOf(path);
      const document = parseDocument(text, { schema: 'failsafe' });
      const { contents } = document;
      if (role.holds === 'shell' && isMap(contents)) plantHead(contents, next);
      else if (role.holds === 'service' && isMap(contents)) plantService(contents, next);
      else if (role.holds === 'shop' && isMap(contents)) return [path, text];
      else if ((role.holds === 'list' || role.holds === 'library') && isSeq(contents)) {
        const fields = fieldsOf(KIND_IN[role.list] as keyof typeof KINDS);
        if (role.list !== 'people') for (const record of contents.items) if (isMap(record)) plant(record, fields, next);
      }
      return [path, document.toString({ lineWidth: 0 })];
    }),
  );
}

const fieldsOf = (kind: keyof typeof KINDS): Fields => (KINDS[kind] as unknown as { fields: Fields }).fields;

function plantHead(head: YAMLMap, next: Next): void {
  const { customer, ...fields } = fieldsOf('shell');
  plant(head, fields, next);
  const chassis = head.get('chassis');
  if (isMap(chassis)) {
    plant(chassis, fieldsOf('chassis'), next);
    plantList(chassis.get('axles'), 'axle', next);
  }
  for (const [list, kind] of [
    ['tanks', 'tank'],
    ['seats', 'seat'],
    ['bays', 'bay'],
  ] as const)
    plantList(head.get(list), kind, next);
}

function plantService(service: YAMLMap, next: Next): void {
  plant(service, fieldsOf('service'), next);
  for (const [list, kind] of [
    ['circuits', 'circuit'],
    ['nodes', 'node'],
    ['runs', 'run'],
  ] as const)
    plantList(service.get(list), kind, next);
}

function plantList(list: unknown, kind: keyof typeof KINDS, next: Next): void {
  if (isSeq(list)) for (const one of list.items) if (isMap(one)) plant(one, fieldsOf(kind), next);
}

function plant(record: YAMLMap, fields: Fields, next: Next): void {
  for (const [key, field] of Object.entries(fields)) plantField(record, key, field, next);
  const own = next('text', 'x-own', undefined);
  if (own !== undefined) record.set('x-own', own);
}

function plantField(record: YAMLMap, key: string, { shape, traits }: AnyField, next: Next): void {
  const before = record.get(key);
  if (shape.is === 'block' && isMap(before)) plant(before, shape.fields, next);
  else if (shape.is === 'list' && isSeq(before) && shape.each.shape.is === 'block') {
    for (const one of before.items) if (isMap(one)) plant(one, shape.each.shape.fields, next);
  } else if (shape.is === 'value') {
    const { as } = shape.form;
    if (traits.person) put(record, key, next(as === 'id' ? 'person by id' : 'person', key, textOf(before)));
    else if (as === 'text') put(record, key, next('text', key, textOf(before)));
    else if (as === 'texts' && isSeq(before)) {
      const more = next('text', key, undefined);
      if (more !== undefined) (before as YAMLSeq).add(more);
    }
  }
}

const textOf = (value: unknown): string | undefined => (typeof value === 'string' ? value : undefined);

function put(record: YAMLMap, key: string, text: string | undefined): void {
  if (text !== undefined) record.set(key, text);
}
