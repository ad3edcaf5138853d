import { answering } from '../answering.js';
import type { Context } from '../context.js';
import type { Status } from '../io.js';
import type { Registry } from '../registry.js';

interface Options {
  readonly shell: string;
  readonly each: boolean;
}

export function declareTakeoff(registry: Registry): void {
  registry
    .add('takeoff <shell>', 'lengths, areas, masses and center of gravity by section, alloy and stage', [
      'shellbook takeoff QF-007',
      'shellbook takeoff QF-007 --each',
    ])
    .option('--each', 'list every member and panel too')
    .action(
      registry.run(
        ([shell], { each }) => ({
          shell: shell as string,
          each: each === true,
        }),
        takeoff,
      ),
    );
}

async function takeoff(options: Options, context: Context): Promise<Status> {
  const opened = await answering(options.shell, context, ['member', 'panel']);
  if (context.settings.json) {
    const { takeoffJson } = await import('../report/takeoff-json.js');
    context.print(takeoffJson(opened.assessment, opened.revision));
  } else {
    const { takeoffText } = await import('../report/takeoff-text.js');
    context.print(takeoffText(opened.assessment, context.paint, options.each));
  }
  return 0;
}
