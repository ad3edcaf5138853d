import { CannotDo } from '../../cannot.js';
import type { Context } from '../context.js';
import type { Status } from '../io.js';
import type { Registry } from '../registry.js';

interface Options {
  readonly kind: string;
}

/** Kinds that are listed in a file of their own, and the name of that file. The others are a whole file, or a part of a record. */
const LISTED: Readonly<Record<string, string>> = {
  material: 'materials',
  certificate: 'certificates',
  section: 'sections',
  conductor: 'conductors',
  procedure: 'procedures',
  person: 'people',
  instrument: 'instruments',
  stage: 'stages',
  rule: 'rules',
  zone: 'zones',
  member: 'members',
  weld: 'welds',
  panel: 'panels',
  opening: 'openings',
  component: 'components',
  ticket: 'weights',
  test: 'tests',
  finding: 'findings',
  signoff: 'signoffs',
  amendment: 'amendments',
  photo: 'photos',
  declared: 'declared',
  clamp: 'clamps',
};

export function declareSchema(registry: Registry): void {
  registry
    .add('schema <kind>', 'JSON Schema of a record file, for editors', ['shellbook schema members > members.schema.json'])
    .action(registry.run(([kind]) => ({ kind: kind as string }), schema));
}

async function schema({ kind }: Options, context: Context): Promise<Status> {
  const [{ listSchema, recordSchema, SCHEMA_KINDS }, { didYouMean }] = await Promise.all([
    import('../../schema/json.js'),
    import('../../source/nearest.js'),
  ]);
  const known = SCHEMA_KINDS.find((one) => one === kind || LISTED[one] === kind);
  if (!known) {
    const close = didYouMean(kind, [...SCHEMA_KINDS, ...Object.values(LISTED)]);
    throw new CannotDo(`No record kind ${kind}${close === '' ? `, expected one of ${SCHEMA_KINDS.join(', ')}` : close}`);
  }
  const list = LISTED[known];
  context.print(JSON.stringify(list === undefined ? recordSchema(known) : listSchema(known, list), null, 2));
  return 0;
}
