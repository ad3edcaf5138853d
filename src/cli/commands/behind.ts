import type { Surface } from '../../compute/access/surfaces.js';
import { UserError } from '../../user-error.js';
import { answering } from '../answering.js';
import type { Context } from '../context.js';
import type { Status } from '../io.js';
import type { Registry } from '../registry.js';

interface Options {
  readonly shell: string;
  readonly panel: string;
  readonly all: boolean;
}

export function declareBehind(registry: Registry): void {
  registry
    .add('behind <shell> <panel>', 'what you can reach through an access panel: hazards first, then the nearest', [
      'shellbook behind QF-007 AP-11',
      'shellbook behind QF-007 AP-11 --all',
    ])
    .option('--all', 'list everything, not only the ten nearest')
    .action(
      registry.run(
        ([shell, panel], { all }) => ({
          shell: shell as string,
          panel: panel as string,
          all: all === true,
        }),
        look,
      ),
    );
}

async function look({ shell, panel, all }: Options, context: Context): Promise<Status> {
  const opened = await answering(shell, context, []);
  const { behind } = await import('../../query/lookup/index.js');
  const contents = behind(opened.assessment, panel);
  if (!contents) throw new UserError(await noSuchPanel(shell, panel, Object.keys(opened.assessment.figures.access.behind)));
  const { hazardsBehind } = await import('../../query/hazards.js');
  const hazards = hazardsBehind(opened.assessment.model.shell, contents);
  if (context.settings.json) {
    const [{ envelope, place3 }, { reachedJson, surfaceJson }, { surfaces }, { unplaced }] = await Promise.all([
      import('../report/json.js'),
      import('../report/where-json.js'),
      import('../../compute/access/surfaces.js'),
      import('../../model/placed.js'),
    ]);
    const listed = contents.map((one) => ({
      id: one.id,
      kind: one.kind,
      ...reachedJson(one),
      nearest_mm: place3(one.nearest),
    }));
    context.print(
      envelope('behind', shell, opened.revision, {
        panel,
        surface: surfaceJson(surfaces(opened.assessment.model).get(panel) as Surface),
        hazards: hazards.map(({ kind, word, ids }) => ({ kind, word, ids })),
        contents: listed,
        not_placed: unplaced(opened.assessment.model.shell),
      }),
    );
  } else {
    const { behindText } = await import('../report/nearby-text.js');
    context.print(behindText(opened.assessment.model, panel, contents, { hazards, all }));
  }
  return 0;
}

async function noSuchPanel(shell: string, panel: string, known: readonly string[]): Promise<string> {
  if (known.length === 0) return `${shell} has no access panel with a recorded outline`;
  const { didYouMean } = await import('../../source/nearest.js');
  const close = didYouMean(panel, known);
  return `${panel} is no access panel of ${shell}${close === '' ? `. It has ${known.slice(0, 8).join(', ')}${known.length > 8 ? ' …' : ''}` : close}`;
}
