import { describe, expect, it } from 'vitest';
import type { Axle } from '../../../src/records/index.js';
import { gvwrAboveAxles } from '../../../src/rules/shell/gvwr-above-axles.js';
import { gvwrMissing } from '../../../src/rules/shell/gvwr-missing.js';
import { buildModel } from '../../support/build.js';
import { judgeOne } from '../judge-one.js';

const axle = (id: string, gawrKg?: number): Axle => ({
  id,
  xMm: 0,
  dual: false,
  lift: false,
  steered: false,
  ...(gawrKg === undefined ? {} : { gawrKg }),
});
const chassis = (axles: readonly Axle[], gvwrKg?: number) =>
  buildModel({ chassis: { frame: {}, axles, ...(gvwrKg === undefined ? {} : { gvwrKg }) } });

describe('shell.gvwr-missing', () => {
  it('warns once there are axles, and is a note before', () => {
    expect(judgeOne(gvwrMissing, chassis([axle('steer')]))[0]?.severity).toBe('warning');
    expect(judgeOne(gvwrMissing, chassis([]))[0]?.severity).toBe('note');
    expect(judgeOne(gvwrMissing, chassis([axle('steer')], 7840))).toEqual([]);
  });
});

describe('shell.gvwr-above-axles', () => {
  it('passes the example that the rule prints', () => {
    // LAB-42, LAB-43: 49 CFR 571.120 S5.3 prints 2,850 + 4,990 = 7,840 kg (from memory)
    expect(judgeOne(gvwrAboveAxles, chassis([axle('front', 2850), axle('rear', 4990)], 7840))).toEqual([]);
  });

  it('refuses more than the axles together', () => {
    // LAB-05: NHTSA letter of 1971, GVWR not more than the sum of the GAWRs
    const [finding] = judgeOne(gvwrAboveAxles, chassis([axle('front', 2850), axle('rear', 4990)], 7900));
    expect(finding?.severity).toBe('error');
    expect(finding?.message).toContain('7,900 kg');
    expect(finding?.message).toContain('7,840 kg');
  });

  it('says nothing where an axle has no rating to add', () => {
    expect(judgeOne(gvwrAboveAxles, chassis([axle('front', 2850), axle('rear')], 7900))).toEqual([]);
  });
});
