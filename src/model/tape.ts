import type { Finding } from '../finding.js';
import type { Vec3 } from '../geometry/vector.js';
import type { TapePhrase } from '../records/form/tape.js';
import type { Library, Taped } from '../records/index.js';
import { kindOf } from '../records/kinds.js';
import { inModel } from '../records/read-model.js';
import { PLACE_KINDS } from '../records/references.js';
import { type TapedField, tapedIn } from '../records/taped-fields.js';
import type { ReadForm } from './records.js';
import { tapeEnd } from './tape-end.js';
import { type TapeSolid, tapeSolid } from './tape-solid.js';

/** common practice, no source: a tape is read to 1/8 in. */
export const TAPE_MM = 25.4 / 8;
const AXES = ['x', 'y', 'z'] as const;

/** What of the places that hang on something is known once they are put in their place. */
export interface PutInPlace {
  /** Forms of which a place cannot be known: told, or a fault of what it hangs on was. */
  readonly lost: ReadonlySet<object>;
  /** By id of the record. */
  readonly taped: ReadonlyMap<string, Taped>;
}

/** Puts every place that hangs on something where that stands, within the forms. Chains are followed; a circle is told at its line. */
export function putInPlace(
  forms: readonly ReadForm[],
  library: Library,
  tapeMm: number | undefined,
  say: (finding: Finding) => void,
): PutInPlace {
  const all = forms.flatMap((one) => {
    const fields = tapedIn(kindOf(one.kind).fields, one.form);
    return fields.length > 0 ? [{ one, fields }] : [];
  });
  if (all.length === 0) return { lost: new Set(), taped: new Map() };
  const putting = new Putting(forms, new Map(all.map(({ one, fields }) => [one, fields])), library, tapeMm ?? TAPE_MM, say);
  for (const { one } of all) putting.settle(one, []);
  return { lost: putting.lost, taped: putting.taped };
}

/** A reference as the tape sees it: what stands there, how well that is known. */
interface Held {
  readonly form: ReadForm;
  readonly solid: TapeSolid | undefined;
  /** Of an axle. */
  readonly xMm?: number;
  readonly uncertaintyMm: number;
}

class Putting {
  readonly lost = new Set<object>();
  readonly taped = new Map<string, Taped>();
  private readonly done = new Set<ReadForm>();
  private readonly byId: ReadonlyMap<string, ReadForm>;
  private readonly held = new Map<string, Held>();

  constructor(
    forms: readonly ReadForm[],
    private readonly fields: ReadonlyMap<ReadForm, readonly TapedField[]>,
    private readonly library: Library,
    private readonly tapeMm: number,
    private readonly say: (finding: Finding) => void,
  ) {
    const kinds: readonly string[] = PLACE_KINDS;
    this.byId = new Map(forms.flatMap((one) => (one.id !== undefined && kinds.includes(one.kind) ? [[one.id, one]] : [])));
  }

  /** `way`: the records whose places wait for this one. */
  settle(form: ReadForm, way: readonly ReadForm[]): void {
    if (this.done.has(form) || this.lost.has(form.form)) return;
    for (const field of this.fields.get(form) ?? []) {
      const place = this.place(form, field, [...way, form]);
      if (place === undefined) return void this.lost.add(form.form);
      field.holder[field.key] = place;
    }
    this.done.add(form);
    const { uncertaintyMm = 0 } = this.taped.get(form.id ?? '') ?? {};
    const typed = form.form as { tolerance?: number };
    // The shop's own word for how well its place is known, where that is the worse of the two.
    if ('tolerance' in kindOf(form.kind).fields && uncertaintyMm > (typed.tolerance ?? 0)) typed.tolerance = uncertaintyMm;
  }

  private place(form: ReadForm, { place, path }: TapedField, way: readonly ReadForm[]): Vec3 | undefined {
    const on: { readonly axis: 0 | 1 | 2; readonly phrase: TapePhrase; readonly held: Held }[] = [];
    for (const axis of [0, 1, 2] as const) {
      const phrase = place.axes[axis];
      if (typeof phrase === 'number') continue;
      const held = this.hold(form, phrase, axis, path, way);
      if (held === undefined) return undefined;
      on.push({ axis, phrase, held });
    }
    const at = place.axes.map((one) => (typeof one === 'number' ? one : 0)) as [number, number, number];
    let squares = [0, 0, 0];
    let said: readonly string[] = [];
    // Once by the boxes, to know where the lines run; then by what the lines meet.
    for (const byLines of [false, true]) {
      squares = [0, 0, 0];
      said = [];
      for (const { axis, phrase, held } of on) {
        const read = tapeEnd(phrase, axis, held, byLines ? [...at] : undefined);
        if (typeof read === 'string') return void this.tell(form, read, [...path, AXES[axis]]);
        at[axis] = read.value;
        squares[axis] = this.tapeMm ** 2 + held.uncertaintyMm ** 2 + read.doubtMm ** 2;
        if (read.said !== undefined) said = [...said, read.said];
      }
    }
    if (form.id !== undefined)
      this.remember(
        form.id,
        Math.sqrt(Math.max(...squares)),
        on.map(({ phrase }) => phrase.id),
        said,
      );
    return at;
  }

  private remember(id: string, uncertaintyMm: number, on: readonly string[], said: readonly string[]): void {
    const known = this.taped.get(id);
    this.taped.set(id, {
      uncertaintyMm: Math.max(uncertaintyMm, known?.uncertaintyMm ?? 0),
      on: [...new Set([...(known?.on ?? []), ...on])],
      said: [...new Set([...(known?.said ?? []), ...said])],
    });
  }

  private hold(
    form: ReadForm,
    { id }: TapePhrase,
    axis: 0 | 1 | 2,
    path: TapedField['path'],
    way: readonly ReadForm[],
  ): Held | undefined {
    const target = this.byId.get(id);
    // What is not there, of the wrong kind, or has a fault of its own was told.
    if (target === undefined) return undefined;
    if (way.includes(target)) {
      const circle = [...way.slice(way.indexOf(target)), target].map((one) => `\`${one.id}\``);
      return void this.tell(
        form,
        `The place of ${circle[0]} hangs on ${circle.slice(1).join(', which hangs on ')}, expected one of them to be known without the others: type it from the datum`,
        path,
      );
    }
    this.settle(target, way);
    if (this.lost.has(target.form)) return undefined;
    const held = this.held.get(id) ?? this.asHeld(target);
    this.held.set(id, held);
    if (target.kind === 'axle' && axis !== 0)
      return void this.tell(form, `Axle \`${id}\` has a place on x only, expected a length or something else for ${AXES[axis]}`, [
        ...path,
        AXES[axis],
      ]);
    if (target.kind !== 'axle' && held.solid === undefined)
      return void this.tell(form, `\`${id}\` has no place that a tape could be held to, expected a length or another id`, [
        ...path,
        AXES[axis],
      ]);
    return held;
  }

  private asHeld(form: ReadForm): Held {
    const { x, tolerance = 0, of } = form.form as { x?: number; tolerance?: number; of?: string };
    const shared = form.kind === 'tank' && of !== undefined ? this.byId.get(of) : undefined;
    if (shared) this.settle(shared, [form]);
    const { kind, id = '', form: read, source } = shared ?? form;
    const record = kind === 'axle' ? undefined : inModel(kind, { id, form: read, source, typed: {} });
    const solid = tapeSolid(kind, record, this.library);
    const uncertaintyMm = Math.max(tolerance, this.taped.get(form.id ?? '')?.uncertaintyMm ?? 0);
    return { form, solid, ...(form.kind === 'axle' ? { xMm: x } : {}), uncertaintyMm };
  }

  private tell(form: ReadForm, message: string, path: readonly (string | number)[]): undefined {
    const whole = [...(form.path ?? []), ...path];
    const ids = form.id === undefined ? [] : [form.id];
    this.say({ rule: 'format.wrong-value', severity: 'error', message, ids, place: form.source.place(...whole) });
    return undefined;
  }
}
