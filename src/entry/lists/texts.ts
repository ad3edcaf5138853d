import { RecordIndex } from '../record-index.js';
import { textsOf } from '../texts.js';
import type { LineKind } from './facts.js';
import type { ListPlan } from './plan.js';

const ORDER: readonly LineKind[] = ['circuit', 'node', 'run'];

/** The new text of every service that a list changes: circuits, then nodes, then runs, each step read again as it was meant. */
export function listTexts(plan: Pick<ListPlan, 'added' | 'changed' | 'begun'>, known: RecordIndex): ReadonlyMap<string, string> {
  const files = new Set([...plan.added.map(({ place }) => place.file), ...plan.changed.map(({ record }) => record.file)]);
  const texts = new Map<string, string>();
  for (const file of files) {
    let text = known.files.get(file)?.text ?? plan.begun.get(file) ?? '';
    for (const kind of ORDER) {
      const now = new RecordIndex({ root: '', files: new Map([[file, text]]), photos: new Map() }, known.shell, known.linked);
      const added = plan.added.filter((one) => one.kind === kind && one.place.file === file);
      const changed = plan.changed.flatMap((one) => {
        if (one.kind !== kind || one.record.file !== file) return [];
        const record = now.find(kind, one.record.id as string);
        return record ? [{ ...one, record }] : [];
      });
      text = textsOf(kind, { added, changed }, now).get(file) ?? text;
    }
    texts.set(file, text);
  }
  return texts;
}
