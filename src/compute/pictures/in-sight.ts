import { type Box, boundsOf, boxBounds, clipToBox } from '../../geometry/box.js';
import { type Facet, facet, throughFacet } from '../../geometry/facet.js';
import { grid } from '../../geometry/grid.js';
import { distance, type Vec3 } from '../../geometry/vector.js';
import type { Model, Photo } from '../../model/shell.js';
import { componentBox, lineWalls } from '../access/walls.js';
import { memberBox } from '../solids.js';
import { wasThere } from './was-there.js';

/** What stands between a camera and a place. */
export interface InSight {
  /** Ids of what hides a place, nearest first known; none: it is in plain sight. `own`: ids that are part of it. */
  hiddenBy(from: Vec3, at: Vec3, own: ReadonlySet<string>): string | undefined;
}

type Form = { readonly id: string } & ({ readonly box: Box } | { readonly sheet: Facet });

/** A line of sight may graze what a place lies on, mm: within this of the place nothing counts. */
const TOUCH_MM = 15;
const CELL_MM = 250;

/** The walls of members, plates, panels and equipment that were there when the photo was taken. */
export function inSight(model: Model, photo: Photo): InSight {
  const there = wasThere(model, photo);
  const { shell, library } = model;
  const forms: Form[] = [];
  for (const member of shell.members.filter(there)) {
    if (member.shape.kind === 'plate') {
      const sheet = facet(member.shape.outline);
      if (sheet) forms.push({ id: member.id, sheet });
      continue;
    }
    const section = library.sections.get(member.shape.section);
    if (section) for (const box of lineWalls(member, section.dimensions)) forms.push({ id: member.id, box });
  }
  for (const panel of shell.panels.filter(there)) {
    const sheet = facet(panel.outline, panel.holes);
    if (sheet) forms.push({ id: panel.id, sheet });
  }
  for (const component of shell.components.filter(there)) {
    const box = componentBox(component);
    if (box) forms.push({ id: component.id, box });
  }
  const index = grid(
    forms.map((form, i) => ({ index: i, bounds: 'box' in form ? boxBounds(form.box) : boundsOf(cornersOf(form.sheet)) })),
    CELL_MM,
  );
  return {
    hiddenBy(from, at, own) {
      let found: string | undefined;
      const length = distance(from, at);
      if (length <= TOUCH_MM) return undefined;
      const end = 1 - TOUCH_MM / length;
      index.visit(boundsOf([from, at]), (i) => {
        const form = forms[i] as Form;
        if (own.has(form.id) || !stops(form, from, at, end)) return false;
        found = form.id;
        return true;
      });
      return found;
    },
  };
}

function stops(form: Form, from: Vec3, at: Vec3, end: number): boolean {
  if ('box' in form) {
    const part = clipToBox(from, at, form.box);
    return part !== undefined && part[0] < end && part[1] > 0;
  }
  const share = throughFacet(from, at, form.sheet);
  return share !== undefined && share < end;
}

const cornersOf = ({ center, u, v, outline }: Facet): readonly Vec3[] =>
  outline.map(
    ([a, b]) => [0, 1, 2].map((k) => (center[k] as number) + (u[k] as number) * a + (v[k] as number) * b) as unknown as Vec3,
  );

/** The box of a member on a line, for its outline in a picture. */
export function memberBoxOf({ library }: Model, member: Model['shell']['members'][number]): Box | undefined {
  if (member.shape.kind === 'plate') return undefined;
  const section = library.sections.get(member.shape.section);
  return section && memberBox(member.shape, section.dimensions);
}
