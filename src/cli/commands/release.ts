import { answering } from '../answering.js';
import type { Context } from '../context.js';
import type { Status } from '../io.js';
import type { Registry } from '../registry.js';

interface Options {
  readonly shell: string;
  readonly all: boolean;
}

export function declareRelease(registry: Registry): void {
  registry
    .add('release <shell>', 'the hand-over sheet for paint and interior: what is left, what to keep off', [
      'shellbook release QF-007',
      'shellbook release QF-007 --json',
    ])
    .option('--all', 'list every run near a face and every open item')
    .action(registry.run(([shell], { all }) => ({ shell: shell as string, all: all === true }), release));
}

async function release(options: Options, context: Context): Promise<Status> {
  const opened = await answering(options.shell, context);
  const [{ handOver }, { checkedAs }] = await Promise.all([import('../report/release.js'), import('../report/checked.js')]);
  const sheet = handOver(checkedAs(opened.assessment, opened.revision), await opened.closed());
  if (context.settings.json) {
    const { releaseJson } = await import('../report/release-json.js');
    context.print(releaseJson(sheet, opened.revision));
  } else {
    const { releaseText } = await import('../report/release-text.js');
    context.print(releaseText(sheet, context.paint, options.all));
  }
  return sheet.open.length > 0 || sheet.weights.budget.some((one) => one.leftKg < 0) ? 1 : 0;
}
