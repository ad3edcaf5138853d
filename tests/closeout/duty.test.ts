import { describe, expect, it } from 'vitest';
import { dutyOf } from '../../src/closeout/duty.js';
import { openItems } from '../../src/closeout/items.js';
import { record } from '../support/build.js';
import { levelPanel, node, run, zone } from '../support/services.js';
import { clamp, lineMember, opening, weld } from '../support/structure.js';
import { finding, modelOf } from './stages.js';

describe('whose it is to put right', () => {
  const [a, b] = [node('A', [0, 0, 0]), node('B', [0, 0, 0], { by: 'E1' })];
  const model = modelOf({
    members: [lineMember('M', [0, 0, 0], [1, 0, 0])],
    panels: [levelPanel('P', [0, 0, 0], [9, 9])],
    openings: [opening('SO')],
    clamps: [clamp('UB', [])],
    zones: [
      zone('Z', [
        [0, 0, 0],
        [1, 1, 1],
      ]),
    ],
    nodes: [a, b, node('GHOST', [0, 0, 0], { by: 'X9' })],
    runs: (['ac', 'data', 'water', 'drain', 'gas', 'air', 'hydraulic', 'refrigerant', 'duct'] as const).map((medium) =>
      run(medium, a, b, [], { medium }),
    ),
    welds: [weld('W', [['M', 'M']], { welder: 'K7' }), weld('W-0', [['M', 'M']], { by: 'E1' })],
    tests: [{ ...record('T'), testKind: 'drop', of: ['A'], by: 'E1' }],
    findings: [],
  });

  // Trades by what they work on: common practice, no source
  it.each([
    ['trade', 'M', 'welder'],
    ['trade', 'SO', 'welder'],
    ['trade', 'UB', 'welder'],
    ['trade', 'P', 'skins and bonding'],
    ['trade', 'A', 'electrician'],
    ['trade', 'ac', 'electrician'],
    ['trade', 'data', 'electrician'],
    ...['water', 'drain', 'gas', 'air', 'hydraulic', 'refrigerant', 'duct'].map(
      (id) => ['trade', id, 'plumber and gas fitter'] as const,
    ),
    ['trade', 'Z', 'shop administrator'],
    ['trade', 'nowhere', 'shop administrator'],
    ['trade', 'GHOST', 'electrician'],
    ['trade', 'W', 'welder (K7)'],
    ['trade', 'W-0', 'shop administrator'],
    ['trade', 'B', 'electrician (E1)'],
    ['trade', 'T', 'electrician (E1)'],
    ['inspector', 'W', 'inspector'],
    ['inspector', 'nowhere', 'inspector'],
    ['administrator', 'W', 'shop administrator'],
  ] as const)('%s for %s: %s', (duty, id, who) => {
    expect(dutyOf(duty, [id], model)).toBe(who);
    expect(dutyOf(duty, ['no-such-id', id], model)).toBe(who);
  });

  it('of a trade is the administrator’s where no record is named', () => {
    expect(dutyOf('trade', [], model)).toBe('shop administrator');
  });

  it.each([
    ['test.not-verified', 'T', 'electrician (E1)'],
    ['weld.fillet-small', 'W', 'welder (K7)'],
    ['weld.not-inspected', 'W', 'inspector'],
    ['panel.bond-not-verified', 'P', 'inspector'],
    ['signoff.lapsed', 'M', 'inspector'],
    ['finding.undecided', 'nowhere', 'inspector'],
    ['format.unit-missing', 'W', 'shop administrator'],
    ['shell.vin-form', 'W', 'shop administrator'],
    ['weight.over-rating', 'W', 'shop administrator'],
    ['record.vin-twice', 'W', 'shop administrator'],
  ])('%s of %s is told to the %s, as the rule declares', (rule, id, who) => {
    expect(openItems({ model, findings: [finding(rule, [id])] })[0]?.who).toBe(who);
  });
});
