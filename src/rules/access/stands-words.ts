import type { PanelReach } from '../../compute/access/types.js';

/** `FUEL stands before the panel`, `CB-04 stands in the way`: what hinders a hand, before the panel and behind it. */
export function standsWords({ approach, blockedBy }: Pick<PanelReach, 'approach' | 'blockedBy'>): string {
  const before = approach?.blockedBy ?? [];
  const words = [
    before.length > 0 ? `${before.join(', ')} stands before the panel` : '',
    blockedBy.length > 0 ? `${blockedBy.join(', ')} stands in the way` : '',
  ].filter(Boolean);
  return words.join(' and ');
}
