import type { TraceKey } from '../../history/trace-query.js';
import { nearest } from '../../source/nearest.js';
import { UserError } from '../../user-error.js';
import type { Context } from '../context.js';
import type { Status } from '../io.js';
import type { Registry } from '../registry.js';

interface Options {
  readonly key: string;
  readonly value: string;
}

export function declareTrace(registry: Registry): void {
  registry
    .add('trace <key> <value>', 'every shell and record that used a heat, lot, welder, procedure, instrument or part', [
      'shellbook trace heat H-4471',
      'shellbook trace lot A-2231 --json',
      'shellbook trace certificate MC-103',
    ])
    .action(registry.run(([key, value]) => ({ key: key as string, value: value as string }), trace));
}

async function trace({ key, value }: Options, context: Context): Promise<Status> {
  const [{ soughtFor, TRACE_KEYS }, { traceStore, heatsOf }, { findStore }] = await Promise.all([
    import('../../history/trace-query.js'),
    import('../trace-store.js'),
    import('../../store/find.js'),
  ]);
  if (context.settings.book !== undefined)
    throw new UserError('A printed book covers one shell: leave out --book, and trace in a store');
  if (!TRACE_KEYS.has(key as TraceKey)) {
    const known = [...TRACE_KEYS.keys()];
    const close = nearest(key, known);
    throw new UserError(`Nothing is traced by \`${key}\`, expected ${close.length > 0 ? close.join(' or ') : known.join(', ')}`);
  }
  if (value.trim() === '') throw new UserError(`Expected the ${key} to trace, as H-4471`);
  const root = findStore(context.io.cwd, context.settings.store);
  const heats = key === 'certificate' ? await heatsOf(root, value) : [];
  const { hits, refused } = await traceStore(root, soughtFor(key as TraceKey, value, heats));
  for (const [file, why] of refused) context.tell(`Not looked at: ${file}: ${why}`);
  if (context.settings.json) {
    const [{ envelope }, { headCommit }] = await Promise.all([import('../report/json.js'), import('../../store/closings.js')]);
    context.print(
      envelope('trace', null, (await headCommit(root)) ?? null, { key, value, hits: hits.map((hit) => ({ ...hit })) }),
    );
  } else if (hits.length === 0) context.print(`No record of any shell has ${key} ${value}.`);
  else {
    const { textTable } = await import('../report/tables.js');
    const shells = new Set(hits.map(({ shell }) => shell)).size;
    const heads = [{ head: 'shell' }, { head: 'kind' }, { head: 'id' }, { head: 'field' }, { head: 'at', wrap: true }];
    context.print(
      textTable(
        heads,
        hits.map(({ shell, kind, id, field, file, line }) => [shell, kind, id, field, `${file}:${line}`]),
      ),
    );
    context.tell(
      `${key} ${value}: ${hits.length} ${hits.length === 1 ? 'place' : 'places'} in ${shells} ${shells === 1 ? 'shell' : 'shells'}.`,
    );
  }
  return hits.length > 0 ? 0 : 1;
}
