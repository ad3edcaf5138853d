import { isolate } from '../../compute/lookup/isolate.js';
import type { Rule } from '../rule.js';

export const notIsolated: Rule = {
  name: 'service.not-isolated',
  severity: 'error',
  finds: 'A distribution panel that stays live whatever is switched, shut or disconnected.',
  why: 'Shore, generator, battery, solar and inverter can each feed it: whoever works on it needs a way to make all of them dead.',
  source: 'common practice, no source; a licensed electrician decides',
  check({ model, figures }) {
    return model.shell.nodes
      .filter((node) => node.nodeKind === 'panel' && (node.medium === 'dc' || node.medium === 'ac'))
      .flatMap((node) => {
        const found = isolate({ model, figures, findings: [] }, node.id);
        if (!found || found.sourcesLeft.length === 0) return [];
        return [
          {
            rule: 'service.not-isolated',
            severity: 'error' as const,
            message: `${node.id} is still fed by ${found.sourcesLeft.join(', ')} when all on record is off, expected a switch, breaker or connector on the way from each: add it to the nodes`,
            ids: [node.id, ...found.sourcesLeft],
            place: node.source.place(),
          },
        ];
      });
  },
};
