import { samples } from '../../compute/access/samples.js';
import { boundsOf } from '../../geometry/box.js';
import { length } from '../../quantity/format.js';
import type { Run, Shell, Zone } from '../../records/index.js';
import type { Rule, RuleFinding } from '../rule.js';

/** Water stands so deep in a trough before it finds a hole, mm: nothing runs in it. */
const WET_MM = 20;

/** A cavity that a belly panel closes from below. */
const isTrough = (zone: Zone, shell: Shell): boolean =>
  zone.box !== undefined &&
  zone.conduit === undefined &&
  shell.panels.some((panel) => panel.panelKind === 'belly' && zone.closedBy.includes(panel.id));

export const troughUndrained: Rule = {
  name: 'service.trough-undrained',
  severity: 'warning',
  asks: 'defect',
  duty: 'trade',
  finds: 'A belly trough without a drain hole on record, or a run in its lowest 20 mm.',
  why: 'Every belly gets wet once. Without a hole it stays wet, and what lies on the floor of it lies in water.',
  source: 'common practice, no source',
  examples: {
    given: `
# panels.yaml
- {id: BP-1, kind: belly, thickness: 2 mm, outline: [[0 m, -0.5 m, 0 m], [3 m, -0.5 m, 0 m], [3 m, 0.5 m, 0 m], [0 m, 0.5 m, 0 m]]}
# zones.yaml
`,
    fails: `
- {id: TC, name: belly trough, box: [[0 m, -0.5 m, 0 m], [3 m, 0.5 m, 0.3 m]], closed_by: [BP-1]}
`,
    passes: `
- {id: TC, name: belly trough, box: [[0 m, -0.5 m, 0 m], [3 m, 0.5 m, 0.3 m]], closed_by: [BP-1], drains: [[2.9 m, 0 m, 0 m]]}
`,
  },
  check({ model: { shell, shop }, figures }) {
    const radius = new Map(figures.takeOff.runs.map((run) => [run.id, (run.outsideDiameterMm ?? 0) / 2] as const));
    return shell.zones
      .filter((zone) => isTrough(zone, shell))
      .flatMap((zone): readonly RuleFinding[] => [...(zone.drains?.length ? [] : [noHole(zone)]), ...wetRuns(zone)]);

    function wetRuns(zone: Zone): readonly RuleFinding[] {
      const { min, max } = boundsOf(zone.box ?? []);
      const low = (run: Run): number =>
        Math.min(
          ...samples(run.path)
            .filter(({ at }) => at.every((value, k) => value >= (min[k] as number) - 1 && value <= (max[k] as number) + 1))
            .map(({ at }) => at[2] - (radius.get(run.id) ?? 0) - min[2]),
        );
      return shell.runs.flatMap((run): readonly RuleFinding[] => {
        const heightMm = low(run);
        // Risers and drains come through the floor: what goes below it is none of the trough's.
        if (!Number.isFinite(heightMm) || heightMm >= WET_MM || run.path.some((at) => at[2] < min[2])) return [];
        return [
          {
            message: `${run.id} runs ${length(Math.max(0, heightMm), shop.units)} above the floor of ${zone.id}, expected ${length(WET_MM, shop.units)} or more: raise it on clips`,
            ids: [run.id, zone.id],
            place: run.source.place('via'),
          },
        ];
      });
    }
  },
};

const noHole = (zone: Zone): RuleFinding => ({
  message: `${zone.id} is closed by a belly panel and has no drain hole on record, expected one at its lowest place: add \`drains: [[x, y, z]]\`, and keep it out of the paint`,
  ids: [zone.id],
  place: zone.source.place(),
});
