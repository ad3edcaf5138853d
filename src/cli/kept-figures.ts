import type { Figures } from '../compute/figures.js';
import type { Sections } from '../store/sections.js';

/** Large ones of whose parts a look-up needs one or two: kept part by part. What they say of a record they say by its id, so that the parts stand alone. */
const IN_PARTS: ReadonlySet<string> = new Set(['access', 'takeOff'] satisfies readonly (keyof Figures)[]);

/** Name of each figure, and the parts of those that are kept in parts. */
type Names = Readonly<Record<string, readonly string[] | null>>;

const sectionOf = (name: string, part?: string): string => (part === undefined ? `figure ${name}` : `figure ${name}, ${part}`);

/** Keeps every figure, each to be read by itself. */
export function keepFigures(kept: Sections, figures: Figures): void {
  const names: Record<string, readonly string[] | null> = {};
  for (const [name, figure] of Object.entries(figures)) {
    names[name] = IN_PARTS.has(name) ? Object.keys(figure as object) : null;
    if (!names[name]) kept.put(sectionOf(name), figure);
    for (const part of names[name] ?? []) kept.put(sectionOf(name, part), (figure as Readonly<Record<string, unknown>>)[part]);
  }
  kept.put('figures', names);
}

/** The figures that were kept, each read when it is asked for: nothing that computes is opened. Undefined where one of them is not there. */
export function keptFigures(kept: Sections): Figures | undefined {
  const names = kept.get('figures') as Names | undefined;
  if (!names || !sectionsOf(names).every((section) => kept.has(section))) return undefined;
  const read = Object.entries(names).map(([name, parts]) => {
    if (!parts) return [name, () => kept.get(sectionOf(name))] as const;
    const figure = whenRead(parts.map((part) => [part, () => kept.get(sectionOf(name, part))]));
    return [name, () => figure] as const;
  });
  return whenRead(read) as Figures;
}

const sectionsOf = (names: Names): readonly string[] =>
  Object.entries(names).flatMap(([name, parts]) => parts?.map((part) => sectionOf(name, part)) ?? sectionOf(name));

/** An object whose values are read when they are asked for. */
function whenRead(values: readonly (readonly [string, () => unknown])[]): object {
  const read = {};
  for (const [name, get] of values) Object.defineProperty(read, name, { get, enumerable: true });
  return read;
}
