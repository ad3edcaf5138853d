/** Sums that a reader would do with a pencil over the plain records. Nothing of the program is imported. */
import { mm, type Plain, type PlainShell, place } from './plain-records.js';

const ELECTRIC = ['dc', 'ac'];
const SOURCES = ['battery', 'shore inlet', 'generator', 'alternator', 'solar panel'];
/** What passes one way only, from its side `in` to its side `out`. */
const ONE_WAY = ['charger', 'solar regulator', 'converter', 'inverter', 'diode'];

/** Every source that can feed a panel with all switches closed: from the panel upstream, wire by wire. */
export function sourcesOf({ nodes, runs }: PlainShell, panel: string): readonly string[] {
  const wires = runs.filter(({ medium }) => ELECTRIC.includes(medium));
  const role = new Map<string, string>(nodes.map(({ id, role: does }) => [id, does]));
  const seen = new Set<string>([panel]);
  const open = [panel];
  for (let at = open.pop(); at !== undefined; at = open.pop()) {
    for (const run of wires) {
      for (const [end, side, far, farSide] of [
        [run.from, run.from_side, run.to, run.to_side],
        [run.to, run.to_side, run.from, run.from_side],
      ]) {
        if (end !== at || seen.has(far)) continue;
        // Against the current through a one-way device there is no way: it is left by its `in`, met by its `out`.
        if (ONE_WAY.includes(role.get(at) ?? '') && side !== 'in') continue;
        if (ONE_WAY.includes(role.get(far) ?? '') && farSide !== 'out') continue;
        seen.add(far);
        open.push(far);
      }
    }
  }
  return [...seen].filter((id) => SOURCES.includes(role.get(id) ?? ''));
}

/** Nodes whose drop falls on a panel that looks down: over its outline as a box, not lower than it, and within `reachIn` inches where given. */
export function joints({ nodes, panels }: PlainShell, id: string, reachIn = Infinity): readonly Plain[] {
  const outline = panels.find((one: Plain) => one.id === id).outline.map(place);
  const span = (k: 0 | 1 | 2) =>
    [Math.min(...outline.map((p: Plain) => p[k])), Math.max(...outline.map((p: Plain) => p[k]))] as const;
  const [xs, ys, zs] = [span(0), span(1), span(2)];
  return nodes.filter(({ at, medium, kind }) => {
    if (!Array.isArray(at) || !['water', 'drain', 'hydraulic'].includes(medium) || ['load', 'device'].includes(kind))
      return false;
    const [x, y, z] = place(at);
    const above = z - zs[1];
    return x > xs[0] && x < xs[1] && y > ys[0] && y < ys[1] && above >= 0 && above <= reachIn * 25.4;
  });
}

/** Lines of members straight across the coach within 10 in under the lowest roof sheet, mm aft, those within 20 mm of each other once. */
export function roofLines({ members, panels }: PlainShell): readonly number[] {
  const roof = Math.min(
    ...panels.filter(({ kind }) => kind === 'roof').flatMap(({ outline }) => outline.map(([, , z]: Plain) => mm(z))),
  );
  const xs: number[] = members
    .filter(({ from, to }) => Array.isArray(from) && Array.isArray(to))
    .map(({ from, to }) => [place(from), place(to)])
    .filter(
      ([a, b]: Plain) =>
        Math.abs(a[1] - b[1]) >= 1000 && Math.abs(a[0] - b[0]) < 1 && Math.abs(a[2] - b[2]) < 1 && Math.abs(roof - a[2]) <= 250,
    )
    .map(([a]: Plain) => a[0])
    .sort((a: number, b: number) => a - b);
  return xs.filter((x, at) => at === 0 || x - (xs[at - 1] as number) > 20);
}

/** Alloys joined, most joints first, with the fillers that joined them. */
export function alloyPairs({ welds, members, panels }: PlainShell) {
  const alloy = new Map<string, string>([...members, ...panels].map((one: Plain) => [one.id, one.alloy]));
  const pairs = new Map<string, { readonly alloys: string; readonly fillers: Set<string>; joints: number }>();
  for (const { joins, filler } of welds)
    for (const pair of (Array.isArray(joins[0]) ? joins : [joins]) as readonly (readonly string[])[]) {
      const alloys = [...new Set(pair.map((id) => alloy.get(id) ?? '?'))].sort().join(' to ');
      const one = pairs.get(alloys) ?? { alloys, fillers: new Set<string>(), joints: 0 };
      one.fillers.add(filler);
      one.joints += 1;
      pairs.set(alloys, one);
    }
  return [...pairs.values()].sort((a, b) => b.joints - a.joints).map((one) => ({ ...one, fillers: [...one.fillers].sort() }));
}
