import { number, positionWords, volume } from '../../quantity/format.js';
import type { Rule } from '../rule.js';

/** Less than this freezes without harm in most lines, L. House rule. */
const HARMLESS_LITRES = 0.2;

export const waterTrapped: Rule = {
  name: 'service.trapped-water',
  severity: 'warning',
  asks: 'defect',
  duty: 'trade',
  finds:
    'A low place of a water or drain line that holds more than 0.2 L with every drain and tap open, level or on a 3 % slope.',
  why: 'It freezes in the first cold night in store, and splits the pipe behind a panel.',
  source: 'common practice, no source',
  examples: {
    given: `
# services/water.yaml
service: water
medium: water
circuits:
  - {id: CW, size: 1/2 in PEX}
nodes:
  - {id: W1, kind: valve, at: [0 m, 0 m, 1 m]}
  - {id: W2, kind: load, name: tap, at: [3 m, 0 m, 1 m]}
runs:
`,
    fails: `
  - {id: CW/1, circuit: CW, from: W1, to: W2, via: [[0.2 m, 0 m, 0.2 m], [2.8 m, 0 m, 0.2 m]], size: 1 in PEX}
`,
    passes: `
  - {id: CW/1, circuit: CW, from: W1, to: W2, size: 3/8 in PEX}
`,
  },
  check({ model: { shell, shop }, figures }) {
    const runs = new Map(shell.runs.map((run) => [run.id, run] as const));
    return figures.services.trapped.flatMap(({ runs: ids, at, levelLitres, slopeLitres, noOutlet }) => {
      const run = runs.get(ids[0] as string);
      if (!run || Math.max(levelLitres, slopeLitres) <= HARMLESS_LITRES) return [];
      const litres = (value: number): string => (shop.units === 'us' ? volume(value / 1000, 'us') : `${number(value, 1)} L`);
      const how = noOutlet ? 'has no drain, tap or tank at all and holds' : 'keeps';
      return [
        {
          message: `${ids.join(', ')} ${how} ${litres(levelLitres)} level and ${litres(slopeLitres)} on a 3 % slope, lowest at ${positionWords(at, shop.units)}, expected at most ${litres(HARMLESS_LITRES)}: add a node of kind \`drain\` there, or raise the line`,
          ids,
          place: run.source.place('via'),
        } as const,
      ];
    });
  },
};
