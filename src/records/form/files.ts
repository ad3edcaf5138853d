import { kindIn, LIBRARY_LISTS, type LibraryList, SHELL_LISTS, type ShellList } from '../lists.js';
import type { KindName } from '../names.js';
import { listSchema, recordSchema, UNITS_SCHEMA } from './json.js';

type Json = Readonly<Record<string, unknown>>;

/** The JSON Schema of one kind of record file, and which files it is of. */
export interface FileSchema {
  /** As the file without `.yaml`: `members`, `shell`, `service`. */
  readonly name: string;
  /** Path patterns in the store. */
  readonly of: readonly string[];
  readonly schema: Json;
}

/** Every file of a store that has a form, for editors. */
export function fileSchemas(): readonly FileSchema[] {
  const list = (name: LibraryList | ShellList, of: readonly string[]): FileSchema => ({
    name,
    of,
    schema: listSchema(kindIn(name), name),
  });
  return [
    { name: 'shop', of: ['shop.yaml'], schema: recordSchema('shop') },
    ...LIBRARY_LISTS.map((name) => list(name, [`library/${name}.yaml`, `library/${name}-*.yaml`])),
    list('rules', ['library/rules/*.yaml']),
    { name: 'shell', of: ['shells/*/shell.yaml'], schema: shellFile() },
    ...SHELL_LISTS.map((name) => list(name, [`shells/*/${name}.yaml`, `shells/*/${name}-*.yaml`])),
    { name: 'service', of: ['shells/*/services/*.yaml'], schema: serviceFile() },
    list('photos', ['shells/*/photos/photos.yaml', 'shells/*/photos/photos-*.yaml']),
  ];
}

/** shell.yaml: identity, and its parts, which are read each on its own. */
function shellFile(): Json {
  const chassis = part('chassis');
  const bare = { ...part('bare'), description: 'The chassis as it came, by axle, and what was in it' };
  return {
    ...merged('shell', {
      chassis: {
        ...chassis,
        description: 'The chassis as its maker rates it, and as it came',
        properties: { ...(chassis.properties as Json), axles: listOf('axle', 'Axles from front to rear'), bare },
      },
      tanks: listOf('tank', 'Tanks, with what they hold'),
      seats: listOf('seat', 'Seats; a belted one counts 68 kg'),
      bays: listOf('bay', 'Where cargo goes, each with its own limit'),
      conditions: listOf('loading condition', 'Loading conditions of the shop’s own'),
      datum: { ...part('datum'), description: 'Where positions of this shell are measured from, if not from the front axle' },
    }),
  };
}

/** services/*.yaml: one service with its circuits, nodes and runs. */
const serviceFile = (): Json =>
  merged('service', {
    circuits: listOf('circuit', 'What the service feeds'),
    nodes: listOf('node', 'Where runs begin, end, join or are switched'),
    runs: listOf('run', 'Wires and pipes, from node to node'),
  });

function merged(kind: KindName, more: Json): Json {
  const head = recordSchema(kind);
  return { ...head, properties: { units: UNITS_SCHEMA, ...(head.properties as Json), ...more } };
}

const part = (kind: KindName): Json => {
  const { $schema: _, ...schema } = recordSchema(kind);
  return schema;
};

const listOf = (kind: KindName, description: string): Json => ({ type: ['array', 'null'], description, items: part(kind) });

/** Folder of the store that the schemas lie in. */
export const SCHEMA_FOLDER = '.schemas';

/** What is laid beside the records so that an editor knows their form: path in the store → text. */
export function editorFiles(): ReadonlyMap<string, string> {
  const schemas = fileSchemas();
  const wired = Object.fromEntries(schemas.map(({ name, of }) => [`./${SCHEMA_FOLDER}/${name}.schema.json`, of]));
  const settings = {
    'yaml.schemas': wired,
    'yaml.format.enable': false,
    '[yaml]': { 'editor.insertSpaces': true, 'editor.tabSize': 2, 'editor.detectIndentation': false },
    'files.associations': { '**/shells/**/*.yaml': 'yaml', '**/library/**/*.yaml': 'yaml' },
  };
  return new Map([
    ...schemas.map(({ name, schema }): [string, string] => [
      `${SCHEMA_FOLDER}/${name}.schema.json`,
      `${JSON.stringify(schema)}\n`,
    ]),
    ['.vscode/settings.json', `${JSON.stringify(settings, null, 2)}\n`],
  ]);
}
