import type { Model } from '../../model/shell.js';
import type { Clamp, Library, Member, Panel } from '../../records/index.js';
import { type Metal, metalOfKind } from '../../records/material.js';
import type { JointFigures } from './types.js';

/** A place where aluminium touches another metal, by the records. */
export interface UnlikeContact {
  /** The clamp, where one makes the contact. */
  readonly clamp?: string;
  /** The aluminium part, then what it touches; a clamp touches what it holds. */
  readonly parts: readonly string[];
  readonly metals: readonly [Metal, Metal];
  /** An insulator is on record: on the clamp, or on a clamp that joins the two. */
  readonly isolated: boolean;
}

/** The metal of an alloy, by the kind of its material in the library. */
export const metalOf = (alloy: string | undefined, { materials }: Library): Metal | undefined =>
  metalOfKind(alloy === undefined ? undefined : materials.get(alloy)?.materialKind);

/** Clamps on aluminium (their bolts are taken as steel), and joints of aluminium with another metal. */
export function unlikeContacts(model: Model, { joints }: Pick<JointFigures, 'joints'>): readonly UnlikeContact[] {
  const { clamps } = model.shell;
  const byClamp = clamps.flatMap((clamp) => contactsOf(clamp, model));
  const isolated = new Set(clamps.filter(({ insulator }) => insulator === true).map(({ id }) => id));
  const byJoint = joints.flatMap(({ members, clamps: holding }): readonly UnlikeContact[] => {
    const metals = members.map((id) => metalOfPart(id, model));
    const first = metals.indexOf('aluminium');
    const other = metals[1 - first];
    if (first < 0 || other === undefined || other === 'aluminium') return [];
    const parts = [members[first] as string, members[1 - first] as string];
    return [{ parts, metals: ['aluminium', other], isolated: (holding ?? []).some((id) => isolated.has(id)) }];
  });
  return [...byClamp, ...byJoint];
}

function contactsOf(clamp: Clamp, model: Model): readonly UnlikeContact[] {
  const held = clamp.joins.filter((id) => metalOfPart(id, model) === 'aluminium');
  if (held.length === 0) return [];
  return [{ clamp: clamp.id, parts: held, metals: ['aluminium', 'steel'], isolated: clamp.insulator === true }];
}

function metalOfPart(id: string, { shell, library }: Model): Metal | undefined {
  const entry = shell.byId.get(id);
  if (entry?.kind !== 'member' && entry?.kind !== 'panel') return undefined;
  return metalOf((entry.record as Member | Panel).alloy, library);
}
