import type { Rule } from '../rule.js';

const some = (ids: readonly string[]): string =>
  ids.length <= 3 ? ids.join(', ') : `${ids.slice(0, 3).join(', ')} and ${ids.length - 3} more`;

export const shareZone: Rule = {
  name: 'service.share-zone',
  severity: 'warning',
  asks: 'defect',
  duty: 'trade',
  finds: 'A cavity that holds two media which the shop keeps in cavities of their own.',
  why: 'Whoever opens it for one meets the other: mains among signal wires, or gas among wires.',
  source: 'limits from shop.yaml; NEC 551 and 552 ask for separation of mains and low voltage, unverified citation',
  examples: {
    given: `
# zones.yaml
- {id: TC, name: chase, box: [[0 m, -0.2 m, 0.9 m], [3 m, 0.2 m, 1.1 m]]}
# services/dc.yaml
service: Lights
medium: dc
nodes:
  - {id: N1, kind: source, name: battery, at: [0 m, 0 m, 1 m]}
  - {id: N2, kind: load, name: lamp, at: [3 m, 0 m, 1 m]}
runs:
  - {id: DC-1/1, circuit: DC-1, from: N1, to: N2}
circuits:
  - {id: DC-1, voltage: 12 V, load: 5 A, protection: {kind: fuse, rating: 7.5 A, at: N1}, conductor: {awg: 14}}
`,
    fails: `
# services/ac.yaml
service: Shore power
medium: ac
nodes:
  - {id: A1, kind: source, at: [0 m, 0.1 m, 1 m]}
  - {id: A2, kind: load, at: [3 m, 0.1 m, 1 m]}
runs:
  - {id: AC/1, from: A1, to: A2, conductor: {awg: 12, conductors: 3}}
`,
    passes: `
# services/ac.yaml
service: Shore power
medium: ac
nodes:
  - {id: A1, kind: source, at: [0 m, 1.1 m, 1 m]}
  - {id: A2, kind: load, at: [3 m, 1.1 m, 1 m]}
runs:
  - {id: AC/1, from: A1, to: A2, conductor: {awg: 12, conductors: 3}}
`,
  },
  check({ model: { shell }, figures }) {
    const zones = new Map(shell.zones.map((zone) => [zone.id, zone] as const));
    const runs = new Map(shell.runs.map((run) => [run.id, run] as const));
    return figures.services.sharedZones.flatMap(({ zone: id, media, runs: [ours, theirs] }) => {
      const zone = zones.get(id);
      const first = runs.get(ours[0] as string);
      if (!zone || !first) return [];
      return [
        {
          severity: media.includes('gas') ? 'error' : 'warning',
          message: `${id} holds ${media[0]} (${some(ours)}) and ${media[1]} (${some(theirs)}), expected one of the two: move one of them to another cavity`,
          ids: [id, ...ours, ...theirs],
          place: zone.source.place(),
          related: [{ message: `${first.id}, ${media[0]}`, place: first.source.place('zones') }],
        } as const,
      ];
    });
  },
};
