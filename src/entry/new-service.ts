import { checkForm } from '../records/form/form.js';
import { Schemas } from '../records/schema.js';
import { roleOf } from '../store/layout.js';
import { UserError } from '../user-error.js';
import { missingFields, optionOf, readFields } from './options.js';
import type { RecordIndex } from './record-index.js';
import { NO_PLACE } from './validate.js';
import { field } from './yaml-text.js';

export interface NewService {
  readonly file: string;
  readonly text: string;
}

/**
 * A service’s file, ready for its circuits, nodes and runs: `--id dc-house --service 'House 12 V' --medium dc`. Throws
 * {@link UserError} with what is missing or wrong.
 */
export function newService(args: readonly string[], known: RecordIndex): NewService {
  const at = args.indexOf('--id');
  const id = at < 0 ? undefined : args[at + 1];
  const data = readFields('service', at < 0 ? args : [...args.slice(0, at), ...args.slice(at + 2)]);
  const missing = missingFields('service', data).map(({ key, help }) => `  --${optionOf(key)}  ${help}`);
  if (id === undefined) missing.unshift('  --id  Name of its file, as dc-house');
  if (id === undefined || missing.length > 0) throw new UserError(`Missing for a service:\n${missing.join('\n')}`);
  const file = `shells/${known.shell}/services/${id}.yaml`;
  if (!/^[\w-]+$/u.test(id) || roleOf(file).holds !== 'service')
    throw new UserError(`Found --id \`${id}\`, expected letters, digits, \`-\` and \`_\`, as dc-house`);
  if (known.files.has(file)) throw new UserError(`${file} is there already`);
  const faults: string[] = [];
  checkForm(new Schemas(), 'service', { data, source: NO_PLACE }, ({ message }) => faults.push(message));
  if (faults.length > 0) throw new UserError(`${faults.join('\n')}\nNothing was written.`);
  const head = Object.entries(data).map(([key, value]) => `${field(key, value, '  ')}\n`);
  return { file, text: `${head.join('')}circuits:\nnodes:\nruns:\n` };
}
