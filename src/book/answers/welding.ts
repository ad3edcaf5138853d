import { rescueItems } from '../../drawing/index.js';
import { beforeWelding } from '../../query/isolate/rescue.js';
import type { Book } from '../book.js';
import { ref, table } from '../table.js';

/** Ids named before the rest is counted. */
const MOST = 12;

interface Pair {
  readonly alloys: string;
  readonly fillers: Set<string>;
  readonly procedures: Set<string>;
  readonly processes: Set<string>;
  count: number;
}

/** Which filler and procedure joined which alloys here; what to disconnect; what must not be heated. */
export function weldingOn(book: Book) {
  const { shell } = book.assessment.model;
  const alloyOf = new Map<string, string | undefined>([...shell.members, ...shell.panels].map((one) => [one.id, one.alloy]));
  const pairs = new Map<string, Pair>();
  for (const weld of shell.welds) {
    for (const joint of weld.joins) {
      const alloys = [...new Set(joint.map((id) => alloyOf.get(id) ?? 'alloy not recorded'))].sort().join(' to ');
      const pair = pairs.get(alloys) ?? { alloys, fillers: new Set(), procedures: new Set(), processes: new Set(), count: 0 };
      if (weld.filler) pair.fillers.add(weld.filler);
      if (weld.procedure) pair.procedures.add(weld.procedure);
      pair.processes.add(weld.process);
      pair.count++;
      pairs.set(alloys, pair);
    }
  }
  const list = (words: ReadonlySet<string>) => [...words].sort().join(', ');
  const bonded = shell.panels.filter((panel) => panel.fixing?.adhesive).map((panel) => ref(panel.id));
  return {
    pairs: table(book.show, {
      rows: [...pairs.values()].sort((a, b) => b.count - a.count),
      columns: (c) => [
        c.text('Alloys joined', (one) => one.alloys),
        c.text('Filler used', (one) => list(one.fillers)),
        c.text('Process', (one) => list(one.processes)),
        c.text('Procedure', (one) => list(one.procedures)),
        c.count('Joints', (one) => one.count),
      ],
      empty: 'No weld is recorded: alloy and filler of a joint are not known from here.',
    }),
    disconnect: rescueItems(shell)
      .items.filter((item) => item.group !== 'Gas' && item.group !== 'Fuel')
      .map((item) => ({ ref: ref(item.id), name: item.name })),
    electronic: beforeWelding(shell).map((node) => ({ ref: ref(node.id), name: node.name ?? node.nodeKind })),
    bonded: bonded.slice(0, MOST),
    moreBonded: Math.max(0, bonded.length - MOST),
  };
}
