import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { editorFiles, type FileSchema, fileSchemas, SCHEMA_FOLDER } from '../../src/records/form/files.js';
import { roleOf } from '../../src/store/layout.js';

/** JSON Schema draft 2020-12 by another validator: ajv. Records are typed with yes and no, and numbers or words in any field. */
const ajv = new Ajv2020({ strict: false, allErrors: true, allowUnionTypes: true });
const ROOT = fileURLToPath(new URL('../../', import.meta.url));
const schemas = fileSchemas();
const validators = new Map(schemas.map((one) => [one.name, ajv.compile(one.schema)]));

const yamlIn = (folder: string): string[] =>
  readdirSync(path.join(ROOT, folder), { recursive: true, withFileTypes: true })
    .filter((one) => one.isFile() && one.name.endsWith('.yaml'))
    .map((one) => path.relative(path.join(ROOT, folder), path.join(one.parentPath, one.name)).split(path.sep).join('/'))
    .filter((name) => /^(?:shop\.yaml|library\/|shells\/)/u.test(name));

const matches = (pattern: string, file: string): boolean =>
  new RegExp(`^${pattern.replaceAll('.', '\\.').replaceAll('*', '[^/]*')}$`, 'u').test(file);
const schemaOf = (file: string): FileSchema | undefined => schemas.find(({ of }) => of.some((pattern) => matches(pattern, file)));

/** The comment that ties a record file to its schema, whatever the editor's settings are; nothing for a file without form. */
function schemaComment(file: string): string | undefined {
  const name = schemaOf(file)?.name;
  const up = '../'.repeat(file.split('/').length - 1) || './';
  return name && `# yaml-language-server: $schema=${up}${SCHEMA_FOLDER}/${name}.schema.json`;
}

describe('JSON Schemas of record files', () => {
  it.each([
    ['demo-data', 50],
    ['records', 8],
  ])('let every file of %s pass', (store, least) => {
    const files = yamlIn(store);
    expect(files.length).toBeGreaterThan(least);
    for (const file of files) {
      const schema = schemaOf(file);
      expect(schema, file).toBeDefined();
      const validate = validators.get(schema?.name as string);
      validate?.(parse(readFileSync(path.join(ROOT, store, file), 'utf8')) ?? []);
      expect(validate?.errors ?? [], file).toEqual([]);
    }
  });

  it.each([
    [
      'members',
      [
        {
          id: 'M-1',
          part: 'rail',
          stage: 'floor',
          section: 'S',
          alloy: 'A',
          from: ['0 in', '0 in'],
          to: ['1 in', '0 in', '0 in'],
        },
      ],
    ],
    ['members', [{ id: 'M-1', part: 'rail', lenght: '3 in' }]],
    ['members', [{ id: 'M 1', part: 'rail' }]],
    ['panels', [{ id: 'P', kind: 'wall' }]],
    ['service', { service: 'House', medium: 'current' }],
    ['service', { medium: 'dc' }],
    ['shell', { shell: 'A', chassis: { gvwr: '1 lb', axels: [] } }],
  ])('tell what is wrong in %s: %j', (name, data) => {
    expect(validators.get(name)?.(data)).toBe(false);
  });

  it('let keys of the shop’s own pass', () => {
    expect(validators.get('declared')?.([{ id: 'L', kind: 'lift', by: 'somebody', 'x-own': { any: 1 } }])).toBe(true);
  });

  it('are one for each file that a store may have', () => {
    for (const { of } of schemas) {
      for (const pattern of of) expect(roleOf(pattern.replaceAll('*', 'x')).holds, pattern).not.toBe('unknown');
    }
  });

  it('say of every key what it is, for an editor to show', () => {
    const silent: string[] = [];
    const walk = (node: unknown, where: string): void => {
      if (typeof node !== 'object' || node === null) return;
      const { properties, ...rest } = node as { properties?: Record<string, { description?: string }> };
      for (const [key, value] of Object.entries(properties ?? {})) {
        if (!value.description) silent.push(`${where}/${key}`);
        walk(value, `${where}/${key}`);
      }
      for (const [key, value] of Object.entries(rest)) walk(value, `${where}/${key}`);
    };
    for (const { name, schema } of schemas) walk(schema, name);
    expect(silent).toEqual([]);
  });
});

describe('wiring', () => {
  const starter = path.join(ROOT, 'templates');
  const files = (['store', 'shell'] as const).flatMap((kind) =>
    readdirSync(path.join(starter, kind), { recursive: true, withFileTypes: true })
      .filter((one) => one.isFile() && one.name.endsWith('.yaml'))
      .map((one) => {
        const file = path.join(one.parentPath, one.name);
        const inside = path.relative(path.join(starter, kind), file).split(path.sep).join('/');
        return { file, place: kind === 'store' ? inside : `shells/X/${inside}` };
      }),
  );
  it('stands in no starter file: editors are wired by `schema --write` alone', () => {
    expect(files.length).toBeGreaterThan(20);
    for (const { file, place } of files) expect(readFileSync(file, 'utf8'), place).not.toContain('yaml-language-server');
  });
  it('names a schema that is laid beside the records, and so do the settings', () => {
    const laid = editorFiles();
    for (const { place } of files) {
      const named = /\$schema=(\S+)$/u.exec(schemaComment(place) ?? '')?.[1] ?? '';
      expect(laid.has(path.posix.normalize(path.posix.join(path.posix.dirname(place), named)))).toBe(true);
    }
    const settings = JSON.parse(laid.get('.vscode/settings.json') ?? '{}');
    for (const name of Object.keys(settings['yaml.schemas'])) expect(laid.has(name.slice(2)), name).toBe(true);
  });
});
