import { UserError } from '../../user-error.js';
import { type Answering, answering } from '../answering.js';
import type { Context } from '../context.js';
import type { Status } from '../io.js';
import { localDay } from '../local-day.js';
import type { Registry } from '../registry.js';

interface Options {
  readonly shell: string;
  readonly for: string | undefined;
  readonly all: boolean;
}

export function declareProgress(registry: Registry): void {
  registry
    .add('progress <shell>', 'hold points by stage: which are met, what would meet the rest, and who is next', [
      'shellbook progress QF-007',
      'shellbook progress QF-007 --for J2        what J2 can do today',
      'shellbook progress QF-007 --for electrician',
    ])
    .option('--for <person>', 'only what this person or trade can do today')
    .option('--all', 'list everything that is missing, even where many are alike')
    .action(
      registry.run(
        ([shell], { for: who, all }) => ({ shell: shell as string, for: who as string | undefined, all: all === true }),
        progress,
      ),
    );
}

async function progress(options: Options, context: Context): Promise<Status> {
  const opened = await answering(options.shell, context);
  const { model } = opened.assessment;
  const day = localDay(new Date());
  const { made, counts, state } = await opened.once(`progress on ${day}`, () => progressOn(day, opened));
  if (made.stages.length === 0)
    throw new UserError('library/stages.yaml has no stages, so nothing can come next. Add one: shellbook add stage --help');
  const shown = { shell: model.shell.id, state, ...made, today: forOne(made.today, options.for), counts, for: options.for };
  if (context.settings.json) {
    const { progressJson } = await import('../report/progress-json.js');
    context.print(progressJson(shown, opened.revision));
  } else {
    const { progressText } = await import('../report/progress-text.js');
    context.print(progressText(shown, context.paint, options.all));
  }
  return 0;
}

async function progressOn(day: string, opened: Answering) {
  const [{ shellProgress }, { checkedAs }, { stateName, progressOf }] = await Promise.all([
    import('../../closeout/stage-progress.js'),
    import('../report/checked.js'),
    import('../../closeout/state.js'),
  ]);
  const { model } = opened.assessment;
  const { findings, counts } = checkedAs(opened.assessment, opened.revision);
  return { made: shellProgress({ model, findings }, day), counts, state: stateName(progressOf(model), await opened.closed()) };
}

/** By the whole of a person’s id, or any whole word of a trade. */
function forOne<T extends { readonly who: string }>(steps: readonly T[], who: string | undefined): readonly T[] {
  if (who === undefined) return steps;
  const wanted = wordsOf(who);
  return steps.filter((step) => {
    const words = new Set(wordsOf(step.who));
    return wanted.length > 0 && wanted.every((word) => words.has(word));
  });
}

const wordsOf = (text: string): readonly string[] =>
  text
    .toLowerCase()
    .split(/[\s(),]+/u)
    .filter(Boolean);
