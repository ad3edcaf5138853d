import type { Edition } from './input.js';

/** Who may see what: the one table. Whatever is not for an edition is taken out before any chapter sees it. */
interface EditionPolicy {
  /** Who ordered the shell, and how to reach them. */
  readonly customer: boolean;
  /** Names and stamps of welders, and who typed what into the record. */
  readonly staff: boolean;
  /** Nonconformance records: every one, or only those that the owner is to be told of. */
  readonly nonconformances: 'all' | 'told';
  /** Areas of the rules whose findings are printed. */
  readonly findings: 'all' | readonly string[];
  /** Words after the shell's number on each page. */
  readonly name: string;
}

export const EDITION_POLICY: Readonly<Record<Edition, EditionPolicy>> = {
  owner: { customer: true, staff: false, nonconformances: 'told', findings: [], name: 'Owner’s edition' },
  service: {
    customer: false,
    staff: false,
    nonconformances: 'all',
    findings: ['weight', 'member', 'weld', 'panel', 'opening', 'service', 'access', 'order', 'test', 'finding'],
    name: 'Service edition',
  },
  shop: { customer: true, staff: true, nonconformances: 'all', findings: 'all', name: 'Shop edition' },
};
