import { type Box, boundsOf, boxBounds, clipToBox, isInBox } from '../../geometry/box.js';
import { type Facet, facet, throughFacet } from '../../geometry/facet.js';
import { type Grid, grid } from '../../geometry/grid.js';
import { distance, type Vec3 } from '../../geometry/vector.js';
import type { Model } from '../../model/shell.js';
import type { Photo } from '../../records/index.js';
import type { RecordBase } from '../../records/record-base.js';
import { solids } from '../access/standing.js';
import { lineWalls } from '../access/walls.js';
import { memberBoxes } from '../solids.js';
import { wasThere } from './was-there.js';

/** What stands between a camera and a place. */
export interface InSight {
  /** Ids of what hides a place, nearest first known; none: it is in plain sight. `own`: ids that are part of it. */
  hiddenBy(from: Vec3, at: Vec3, own: ReadonlySet<string>): string | undefined;
}

/** `record` is absent for the chassis, which came first; a `hollow` form hides nothing from who looks in, nor what is in it. */
type Form = { readonly id: string; readonly record?: RecordBase; readonly hollow?: boolean } & (
  | { readonly box: Box }
  | { readonly sheet: Facet }
);

/** A line of sight may graze what a place lies on, mm: within this of the place nothing counts. */
const TOUCH_MM = 15;
const CELL_MM = 250;

/** The walls of members, plates, panels, and the solids of equipment, tanks, bays and chassis that were there when the photo was taken. */
export function inSight(model: Model, photo: Photo): InSight {
  const { forms, index } = allForms(model);
  const there = wasThere(model, photo);
  const stood = new Map<RecordBase, boolean>();
  const isThere = (record: RecordBase | undefined): boolean => {
    if (!record) return true;
    const known = stood.get(record) ?? there(record);
    stood.set(record, known);
    return known;
  };
  return {
    hiddenBy(from, at, own) {
      let found: string | undefined;
      const length = distance(from, at);
      if (length <= TOUCH_MM) return undefined;
      const end = 1 - TOUCH_MM / length;
      index.visit(boundsOf([from, at]), (i) => {
        const form = forms[i] as Form;
        if (own.has(form.id) || !isThere(form.record) || !stops(form, from, at, end)) return false;
        found = form.id;
        return true;
      });
      return found;
    },
  };
}

interface Forms {
  readonly forms: readonly Form[];
  readonly index: Grid;
}

/** The same walls stand in every photo of a shell. */
const FORMS = new WeakMap<object, Forms>();

function allForms(model: Model): Forms {
  const known = FORMS.get(model.shell);
  if (known) return known;
  const forms = [...memberForms(model), ...sheetForms(model.shell.panels), ...solidForms(model)];
  const index = grid(
    forms.map((form, i) => ({ index: i, bounds: 'box' in form ? boxBounds(form.box) : boundsOf(cornersOf(form.sheet)) })),
    CELL_MM,
  );
  const made = { forms, index };
  FORMS.set(model.shell, made);
  return made;
}

const memberForms = ({ shell, library }: Model): readonly Form[] =>
  shell.members.flatMap((record): readonly Form[] => {
    if (record.shape.kind === 'plate') {
      const sheet = facet(record.shape.outline);
      return sheet ? [{ id: record.id, record, sheet }] : [];
    }
    const section = library.sections.get(record.shape.section);
    return section ? lineWalls(record, section.dimensions).map((box) => ({ id: record.id, record, box })) : [];
  });

const sheetForms = (panels: Model['shell']['panels']): readonly Form[] =>
  panels.flatMap((record) => {
    const sheet = facet(record.outline, record.holes);
    return sheet ? [{ id: record.id, record, sheet }] : [];
  });

/** A tank whose size is not recorded hides nothing: its cube is only a guess. */
const solidForms = (model: Model): readonly Form[] =>
  solids(model)
    .filter(({ kind, assumed }) => kind !== 'tank' || assumed === undefined)
    .map(({ id, kind, box }) => ({
      id,
      record: model.shell.byId.get(id)?.record as RecordBase | undefined,
      hollow: kind === 'bay',
      box,
    }));

function stops(form: Form, from: Vec3, at: Vec3, end: number): boolean {
  if ('box' in form) {
    if (form.hollow && (isInBox(from, form.box, 0) || isInBox(at, form.box, 0))) return false;
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

/** The boxes of a member on a line, for its outline in a picture: of a bent one a box a chord. None of a plate. */
export function memberBoxesOf({ library }: Model, member: Model['shell']['members'][number]): readonly Box[] {
  if (member.shape.kind === 'plate') return [];
  const section = library.sections.get(member.shape.section);
  return section ? memberBoxes(member.shape, section.dimensions) : [];
}
