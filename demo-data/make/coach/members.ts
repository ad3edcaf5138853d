import { at, bare, feet, inch, lengthOf, type P } from '../inches.js';
import { pick, scatter } from '../random.js';
import { list, listWithUnits, type Rec } from '../yaml.js';
import { isLine, type Part } from './types.js';

/** Heats in the rack, by what is cut from them. */
export type Heats = Readonly<Record<string, readonly string[]>>;

const heatKey = (part: Part): string => (isLine(part) ? part.section : `plate ${part.alloy}`);

/** `units: true` for a file that opens with inches for its bare numbers. */
export function memberRecord(part: Part, heats: Heats, random: () => number, units = false): Rec {
  const heat = pick(heats[heatKey(part)] ?? heats.any ?? ['H-?'], random);
  const point = (p: P): readonly (string | number)[] => (units ? bare(p) : at(p));
  if (!isLine(part)) {
    return {
      id: part.id,
      part: part.part,
      stage: part.stage,
      alloy: part.alloy,
      heat,
      plate: { thickness: inch(part.thickness), outline: part.outline.map(point) },
      ...(part.note ? { note: part.note } : {}),
    };
  }
  return {
    id: part.id,
    part: part.part,
    stage: part.stage,
    section: part.section,
    alloy: part.alloy,
    from: point(part.from),
    to: point(part.to),
    ...(part.roll ? { roll: part.roll } : {}),
    cut_length: feet(lengthOf([part.from, part.to]), 32),
    heat,
    ...(part.note ? { note: part.note } : {}),
  };
}

export interface MemberFile {
  readonly name: string;
  readonly head: readonly string[];
  readonly units?: boolean;
}

/** The text of each members-*.yaml; `comments` stands above the member that it names. */
export function memberFiles(
  parts: readonly Part[],
  files: readonly MemberFile[],
  heats: Heats,
  comments: Readonly<Record<string, string | readonly string[]>> = {},
  change: (record: Rec) => Rec | undefined = (record) => record,
): ReadonlyMap<string, string> {
  const random = scatter(7);
  return new Map(
    files.map(({ name, head, units }) => {
      const records = parts
        .filter((part) => part.file === name)
        .map((part) => ({
          ...(comments[part.id] ? { '#': comments[part.id] } : {}),
          ...memberRecord(part, heats, random, units),
        }))
        .map(change)
        .filter((record) => record !== undefined);
      const text = units ? listWithUnits(head, '{length: in}', 'members', records) : list(head, records);
      return [`members-${name}.yaml`, text] as const;
    }),
  );
}
