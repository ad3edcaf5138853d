import { CannotDo } from '../../cannot.js';
import type { Vec3 } from '../../geometry/vector.js';
import type { Context } from '../context.js';
import type { Status } from '../io.js';
import { openForAnswer, revisionOf } from '../open.js';
import type { Registry } from '../registry.js';

interface Options {
  readonly shell: string;
  readonly place: string;
  readonly within: string;
}

export function declareNear(registry: Registry): void {
  registry
    .add('near <shell> <x,y,z>', 'what runs or stands near a point: what a drill would meet', [
      'shellbook near QF-007 180in,-10in,0 --within 4in',
      'shellbook near QF-007 4572mm,-254mm,0',
    ])
    .option('--within <distance>', 'how far to look', '3in')
    .action(
      registry.run(
        ([shell, place], { within }) => ({
          shell: shell as string,
          place: (place as string).trim(),
          within: within as string,
        }),
        look,
      ),
    );
}

async function look(options: Options, context: Context): Promise<Status> {
  const { parseQuantity } = await import('../../quantity/parse.js');
  const lengthOf = (typed: string, of: string): number => {
    // A bare number is refused with what to write; it comes as text from a command line.
    const read = parseQuantity(typed.trim(), 'length');
    if (!read.ok) throw new CannotDo(`${read.message} (${of})`);
    return read.value;
  };
  const typed = options.place.split(',');
  if (typed.length !== 3)
    throw new CannotDo(`Unexpected place \`${options.place}\`, expected x,y,z with units, as 180in,-10in,0`);
  const place = typed.map((one, i) => lengthOf(one, `${'xyz'[i]} of the place`)) as unknown as Vec3;
  const withinMm = lengthOf(options.within, '--within');
  const opened = await openForAnswer(options.shell, context, []);
  const { near } = await import('../../compute/lookup/index.js');
  const hits = near(opened.assessment, place, withinMm);
  if (context.settings.json) {
    const { envelope, place3 } = await import('../report/json.js');
    const listed = hits.map((one) => ({
      id: one.id,
      kind: one.kind,
      distance_mm: one.distanceMm,
      nearest_mm: place3(one.nearest),
      tolerance_mm: one.toleranceMm,
    }));
    context.print(
      envelope('near', options.shell, revisionOf(opened), {
        place_mm: place3(place),
        within_mm: withinMm,
        hits: listed,
      }),
    );
  } else {
    const { nearText } = await import('../report/nearby-text.js');
    context.print(nearText(opened.assessment.model, place, withinMm, hits));
  }
  return 0;
}
