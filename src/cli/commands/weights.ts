import { UserError } from '../../user-error.js';
import { type Answering, answering } from '../answering.js';
import type { Context } from '../context.js';
import { gather } from '../gather.js';
import type { Status } from '../io.js';
import type { Registry } from '../registry.js';

interface Options {
  readonly shell: string;
  readonly all: boolean;
  readonly with: readonly string[];
}

export function declareWeights(registry: Registry): void {
  registry
    .add('weights <shell>', 'axle loads against every rating, by loading condition; cargo and bays', [
      'shellbook weights QF-007',
      'shellbook weights QF-007 --json',
      'shellbook weights QF-007 --with "600 lb @ B1-R" --with "80 lb @ 120in,-38in,10in"',
    ])
    .option('--all', 'show lifted-axle and worst-case conditions too')
    .option('--with <mass @ place>', 'try a load: what it does to each axle, wheel end, tire and bay (may be repeated)', gather)
    .action(
      registry.run(
        ([shell], options) => ({
          shell: shell as string,
          all: options.all === true,
          with: (options.with as readonly string[] | undefined) ?? [],
        }),
        weights,
      ),
    );
}

async function weights(options: Options, context: Context): Promise<Status> {
  const opened = await answering(options.shell, context, ['shell', 'weight']);
  const { assessment } = opened;
  if (options.with.length > 0) return withLoads(options, context, opened);
  if (context.settings.json) {
    const { weightsJson } = await import('../report/weights-json.js');
    context.print(weightsJson(assessment, opened.revision));
  } else {
    const { weightsText } = await import('../report/weights-text.js');
    context.print(weightsText(assessment, context.paint, options.all));
  }
  const { conditions } = assessment.figures.weights;
  const counting = conditions.filter((one) => one.certified || one.kind === 'weighed');
  return counting.some((one) => one.verdict === 'over' || one.axles.some((axle) => axle.verdict === 'over')) ? 1 : 0;
}

/** The vehicle with loads that somebody thinks of. Exit 1 where anything is over. */
async function withLoads(options: Options, context: Context, opened: Answering): Promise<Status> {
  const { model, figures } = opened.assessment;
  const [{ thoughtOf }, { openStoreFor }] = await Promise.all([import('../thoughts.js'), import('../open.js')]);
  const { whatIf } = await import('../../compute/weights/what-if.js');
  const { isOver, whatIfJson, whatIfText } = await import('../report/what-if.js');
  const thoughts = await Promise.all(
    options.with.map((typed) => thoughtOf(model, typed, async () => (await openStoreFor(context)).text)),
  );
  const rows = whatIf(model, figures.weights, thoughts);
  if (rows.length === 0) {
    const why = figures.weights.problems[0] ?? 'nothing weighed and no bare chassis on record';
    throw new UserError(`What a load does cannot be said: ${why}`);
  }
  if (context.settings.json) {
    const { weightsJson } = await import('../report/weights-json.js');
    context.print(weightsJson(opened.assessment, opened.revision, whatIfJson(options.with, thoughts, rows)));
  } else {
    const { shownIn } = await import('../report/shown.js');
    context.print(whatIfText(options.with, rows, shownIn(model.shop.units), context.paint));
  }
  return isOver(rows) ? 1 : 0;
}
