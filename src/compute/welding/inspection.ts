import type { Model } from '../../model/shell.js';
import { dayOf } from '../../quantity/day.js';
import type { Inspection, Inspections, Member, MemberClass, Weld } from '../../records/index.js';
import { isPrimary } from '../structure/materials.js';

/** How much of the joints of a class was accepted by a method. */
export interface InspectionShare {
  readonly jointClass: MemberClass;
  readonly method: string;
  readonly joints: number;
  readonly accepted: number;
  /** Accepted over all joints. */
  readonly share: number;
  /** Least share that the shop asks for; absent where it asks for none. */
  readonly required?: number;
}

/** Methods are compared in capitals; `visual` is another word for VT. */
export function methodName(typed: string): string {
  const method = typed.trim().toUpperCase();
  return method === 'VISUAL' ? 'VT' : method;
}

/** Primary where every part that it joins is a primary member; a panel or a secondary member makes the joint secondary. */
export function jointClass(weld: Weld, { shell }: Model): MemberClass {
  const primary = weld.joins.flat().every((id) => {
    const entry = shell.byId.get(id);
    return entry?.kind !== 'panel' && (entry?.kind !== 'member' || isPrimary(entry.record as Member));
  });
  return primary ? 'primary' : 'secondary';
}

/** True where the last look by this method accepted the weld. */
export const acceptedBy = ({ inspections }: Weld, method: string): boolean =>
  inspections.filter((one) => methodName(one.method) === method).at(-1)?.result === 'accept';

/** Least share of a class that the shop wants inspected by a method. Visual of all is the default: AWS D1.2. */
const requiredShare = (inspections: Inspections, of: MemberClass, method: string): number | undefined =>
  inspections[of][method] ?? (method === 'VT' ? 1 : undefined);

/** By class, then method: every method that the shop asks for or that was used. */
export function inspectionShares(model: Model): readonly InspectionShare[] {
  const { welds } = model.shell;
  const asked = model.shop.inspection;
  return (['primary', 'secondary'] as const).flatMap((of) => {
    const own = welds.filter((weld) => jointClass(weld, model) === of);
    const joints = own.reduce((sum, { joins }) => sum + joins.length, 0);
    if (joints === 0) return [];
    const used = own.flatMap(({ inspections }) => inspections.map(({ method }) => methodName(method)));
    return [...new Set(['VT', ...Object.keys(asked[of]), ...used])].map((method) => {
      const accepted = own.filter((weld) => acceptedBy(weld, method)).reduce((sum, { joins }) => sum + joins.length, 0);
      return { jointClass: of, method, joints, accepted, share: accepted / joints, required: requiredShare(asked, of, method) };
    });
  });
}

/** What is wrong with the order in which a weld was looked at. */
export interface OutOfOrder {
  readonly what: 'before the weld' | 'before the look above' | 'no repair number';
  readonly at: number;
  readonly look: Inspection;
}

/** Looks that cannot have happened in the order on record: one fault for each look. */
export function outOfOrder({ date, inspections }: Weld): readonly OutOfOrder[] {
  return inspections.flatMap((look, at): readonly OutOfOrder[] => {
    const above = inspections[at - 1];
    if (date !== undefined && dayOf(look.date) < dayOf(date)) return [{ what: 'before the weld', at, look }];
    if (above && look.date < above.date.slice(0, look.date.length)) return [{ what: 'before the look above', at, look }];
    const rejected = inspections
      .slice(0, at)
      .some((one) => one.result === 'reject' && methodName(one.method) === methodName(look.method));
    return rejected && look.result === 'accept' && look.repair === undefined ? [{ what: 'no repair number', at, look }] : [];
  });
}
