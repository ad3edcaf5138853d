import type { Context } from '../context.js';
import type { Status } from '../io.js';
import { openForAnswer, revisionOf } from '../open.js';
import type { Registry } from '../registry.js';

interface Options {
  readonly shell: string;
  readonly all: boolean;
}

export function declareWeights(registry: Registry): void {
  registry
    .add('weights <shell>', 'axle loads against every rating, by loading condition; cargo and bays', [
      'shellbook weights QF-007',
      'shellbook weights QF-007 --json',
    ])
    .option('--all', 'show lifted-axle and worst-case conditions too')
    .action(registry.run(([shell], { all }) => ({ shell: shell as string, all: all === true }), weights));
}

async function weights(options: Options, context: Context): Promise<Status> {
  const opened = await openForAnswer(options.shell, context, ['shell', 'weight']);
  const { assessment } = opened;
  if (context.settings.json) {
    const { weightsJson } = await import('../report/weights-json.js');
    context.print(weightsJson(assessment, revisionOf(opened)));
  } else {
    const { weightsText } = await import('../report/weights-text.js');
    context.print(weightsText(assessment, context.paint, options.all));
  }
  const { conditions } = assessment.figures.weights;
  const counting = conditions.filter((one) => one.certified || one.kind === 'weighed');
  return counting.some((one) => one.verdict === 'over' || one.axles.some((axle) => axle.verdict === 'over')) ? 1 : 0;
}
