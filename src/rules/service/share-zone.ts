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
  source: 'limits from shop.yaml; NEC 551 and 552 ask for separation of mains and low voltage, from memory',
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
