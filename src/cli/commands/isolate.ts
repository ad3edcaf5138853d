import { UserError } from '../../user-error.js';
import { answering } from '../answering.js';
import type { Context } from '../context.js';
import type { Status } from '../io.js';
import type { Registry } from '../registry.js';

interface Options {
  readonly shell: string;
  readonly id: string;
}

export function declareIsolate(registry: Registry): void {
  registry
    .add(
      'isolate <shell> <id>',
      'what to switch off, shut and disconnect before you work on it, and whether any source is left',
      ['shellbook isolate QF-007 DC-12'],
    )
    .action(registry.run(([shell, id]) => ({ shell: shell as string, id: id as string }), cutOff));
}

async function cutOff({ shell, id }: Options, context: Context): Promise<Status> {
  const opened = await answering(shell, context, []);
  const { isolate } = await import('../../query/lookup/index.js');
  const isolation = isolate(opened.assessment, id);
  if (!isolation) throw new UserError(await nothingToIsolate(shell, id, opened.assessment.model.shell.byId.keys()));
  if (context.settings.json) {
    const { envelope } = await import('../report/json.js');
    context.print(
      envelope('isolate', shell, opened.revision, {
        id: isolation.id,
        kind: isolation.kind,
        media: isolation.media,
        verified: isolation.verified,
        unknown: isolation.unknown.map(({ id: of, what }) => ({ id: of, what })),
        actions: isolation.actions.map(({ id: of, kind, action, say, step, circuit, place, panels, lines }) => ({
          id: of,
          kind,
          action,
          say,
          how: say,
          step,
          circuit,
          place,
          panels,
          lines: lines ?? [],
        })),
        sources: isolation.sources,
        sources_left: isolation.sourcesLeft,
        notes: isolation.notes,
      }),
    );
  } else {
    const { isolateText } = await import('../report/isolate-text.js');
    context.print(isolateText(opened.assessment.model, isolation, context.paint));
  }
  // With no source on record, or a fact missing, there is nothing to prove it by: that is not a yes.
  return isolation.verified && isolation.sourcesLeft.length === 0 ? 0 : 1;
}

async function nothingToIsolate(shell: string, id: string, known: Iterable<string>): Promise<string> {
  const ids = [...known];
  if (ids.includes(id)) return `${id} of ${shell} is no part of a service: name a circuit, run or node`;
  const { didYouMean } = await import('../../source/nearest.js');
  return `Nothing in ${shell} is called ${id}${didYouMean(id, ids)}`;
}
