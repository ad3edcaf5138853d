import type { Vec3 } from '../../geometry/vector.js';
import { UserError } from '../../user-error.js';
import { answering } from '../answering.js';
import type { Context } from '../context.js';
import type { Status } from '../io.js';
import type { Registry } from '../registry.js';

interface Options {
  readonly shell: string;
  readonly place: string;
  readonly within: string;
  readonly knownTo: string;
}

export function declareNear(registry: Registry): void {
  registry
    .add('near <shell> <x,y,z>', 'what is near a point: what a drill there would hit', [
      'shellbook near QF-007 180,-10,0in --within 4in',
      'shellbook near QF-007 4572mm,-254mm,0mm',
      'shellbook near QF-007 "24 in aft of P-L-06, on SK-L-03, 14 in above FB-L"',
    ])
    .option('--within <distance>', 'how far to look', '3in')
    .option('--known-to <distance>', 'how closely you know the place: looks that much farther and shortens the screw by it')
    .action(
      registry.run(
        ([shell, place], { within, knownTo }) => ({
          shell: shell as string,
          place: (place as string).trim(),
          within: within as string,
          knownTo: (knownTo as string | undefined) ?? '0 mm',
        }),
        look,
      ),
    );
}

async function look(options: Options, context: Context): Promise<Status> {
  const { parseQuantity } = await import('../../quantity/parse.js');
  const lengthOf = (typed: string, of: string): number => {
    const read = parseQuantity(typed.trim(), 'length');
    if (!read.ok) throw new UserError(`${read.message} (${of})`);
    return read.value;
  };
  const byTape = TAPED.test(options.place);
  const lengths = byTape ? [] : unitsOnEach(options.place).map((one, i) => lengthOf(one, `${'xyz'[i]} of the place`));
  const withinMm = lengthOf(options.within, '--within');
  const knownToMm = lengthOf(options.knownTo, '--known-to');
  const opened = await answering(options.shell, context, []);
  const { placeAt } = await import('../../model/place-at.js');
  const told = byTape
    ? placeAt(options.place, opened.assessment.model)
    : { at: lengths as unknown as Vec3, uncertaintyMm: 0, said: [] };
  if (typeof told === 'string') throw new UserError(told);
  const { at: place } = told;
  const uncertaintyMm = Math.hypot(knownToMm, told.uncertaintyMm);
  for (const sentence of told.said) context.tell(sentence);
  const { near, screwAt } = await import('../../query/lookup/index.js');
  const hits = near(opened.assessment, place, withinMm, uncertaintyMm);
  const screw = screwAt(opened.assessment, place, uncertaintyMm);
  if (context.settings.json) {
    const [{ envelope, place3 }, { unplaced }] = await Promise.all([
      import('../report/json.js'),
      import('../../model/placed.js'),
    ]);
    const listed = hits.map((one) => ({
      id: one.id,
      kind: one.kind,
      distance_mm: one.distanceMm,
      nearest_mm: place3(one.nearest),
      tolerance_mm: one.toleranceMm,
    }));
    context.print(
      envelope('near', options.shell, opened.revision, {
        place_mm: place3(place),
        within_mm: withinMm,
        uncertainty_mm: uncertaintyMm,
        face: screw?.panel ?? null,
        hits: listed,
        not_placed: unplaced(opened.assessment.model.shell),
        screw: screw && {
          panel: screw.panel,
          at_mm: place3(screw.at),
          depth_mm: screw.depthMm,
          limited_by: screw.meets?.id,
          limited_by_kind: screw.meets?.kind,
          metal: screw.metal.map(({ id, fromMm, toMm }) => ({ id, from_mm: fromMm, to_mm: toMm })),
        },
      }),
    );
  } else {
    const { nearText } = await import('../report/nearby-text.js');
    context.print(nearText(opened.assessment.model, place, withinMm, hits, screw));
  }
  return 0;
}

/** `24 in aft of P-L-06, on SK-L-03, 14 in above FB-L` */
const TAPED = /\b(?:of|on|above|below)\s+\S/iu;
const BARE = /^[-+−]?[\d.]+$/u;

/** `180,-10,0in` is read as `180in,-10in,0in`: three places of one unit. A bare number says nothing, and is refused with what to write. */
export function unitsOnEach(place: string): readonly string[] {
  const typed = place.split(',').map((one) => one.trim());
  if (typed.length !== 3) throw new UserError(`Found the place \`${place}\`, expected x,y,z with units, as 180,-10,0in`);
  const [x, y, z] = typed as [string, string, string];
  const unit = /[a-z'"].*$/iu.exec(z)?.[0];
  if (unit !== undefined && BARE.test(x) && BARE.test(y)) return [`${x} ${unit}`, `${y} ${unit}`, z];
  const bare = typed.find((one) => BARE.test(one) && Number(one) !== 0);
  if (bare === undefined) return typed;
  throw new UserError(
    `Found the bare number \`${bare}\` in place \`${place}\`, expected a unit once at the end or on each: write \`${x},${y},${z}in\` or \`${x},${y},${z}mm\``,
  );
}
