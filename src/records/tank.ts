import type { Vec3 } from '../geometry/vector.js';
import { STANDING } from './component.js';
import { id, listed, oneOf, position, quantity, size } from './fields.js';
import { kind, type RecordOf } from './kind.js';
import { densityOf, HEAVIEST_KG_M3, hasListedWords, TANK_USES } from './tank-contents.js';

/** The box that something fills. */
export interface FilledBox {
  /** Length, width, height: along x, y, z, mm. */
  readonly sizeMm?: Vec3;
  /** Its middle; where not typed, the record's place. */
  readonly middle?: Vec3;
  /** It hangs outside, exposed. */
  readonly outside?: boolean;
  /** The slide-out that it moves with. */
  readonly ridesOn?: string;
}

export function bodyOf({ sizeMm, middle, outside, ridesOn }: FilledBox): FilledBox | undefined {
  const typed = [sizeMm, middle, outside, ridesOn].some((one) => one !== undefined);
  return typed ? { sizeMm, middle, outside, ridesOn } : undefined;
}

/** One of shell.yaml’s `tanks` */
export const tank = kind(
  'tank',
  { in: 'head', path: ['tanks'] },
  {
    contents: listed('contents', 'What it holds').required(),
    capacity: quantity('volume', 'Volume when full', 'above zero').required(),
    at: position('Middle of the tank').notLent().required(),
    density: quantity('density', 'Where the contents are not among the known ones', 'above zero'),
    use: oneOf(TANK_USES, 'What it is for').describes(),
    of: id('The component whose size is this tank’s').names('component').describes(),
    size: size('Outside size, as 60 in x 20 in x 12 in: along, across, up').describes(),
    ...STANDING,
  },
  {
    /** Undefined where nobody says how heavy the contents are. */
    finish({ sizeMm, middle, outside, ridesOn, densityKgM3: typed, ...rest }) {
      const known = typed ?? densityOf(rest.contents);
      const isTaken = known === undefined && hasListedWords(rest.contents);
      const densityKgM3 = isTaken ? HEAVIEST_KG_M3 : known;
      const body = bodyOf({ sizeMm, middle, outside, ridesOn });
      return densityKgM3 === undefined
        ? undefined
        : ({ ...rest, densityKgM3, ...(isTaken ? { isDensityTaken: true } : {}), ...(body ? { body } : {}) } as typeof rest & {
            readonly densityKgM3: number;
            /** Neither recorded nor of a listed word: the heaviest of the list. */
            readonly isDensityTaken?: boolean;
            readonly body?: FilledBox;
          });
    },
    check({ id: own, form, source }, tell) {
      if (form.density !== undefined || densityOf(form.contents) !== undefined || hasListedWords(form.contents)) return;
      const message = `Missing key \`density\` of tank ${own}: the density of \`${form.contents}\` is not known here, expected it typed, as \`density: 1000 kg/m3\``;
      tell('format.missing-key', message, source.place('contents'), [own]);
    },
    structure: true,
  },
);

export type Tank = RecordOf<typeof tank>;
