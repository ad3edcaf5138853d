import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { admits, limitMm, REACH_MM, reachOf } from '../../../src/compute/access/reach.js';

describe('reach', () => {
  it('RCH-A01 to A03, RCH-P1: 5th percentile woman, ANSUR II 2012', () => {
    expect(REACH_MM).toEqual({ hand: 165, forearm: 404, arm: 675 });
  });

  it('RCH-P3: an opening of 90 × 90 lets the hand in, not the forearm; 300 deep is beyond', () => {
    expect(admits([90, 90])).toBe('hand');
    expect(reachOf(300, admits([90, 90]))).toBe('beyond');
    expect(reachOf(160, admits([90, 90]))).toBe('hand');
  });

  it('RCH-P4: 125 × 125, 674 and 676 deep', () => {
    expect(reachOf(674, admits([125, 125]))).toBe('arm');
    expect(reachOf(676, admits([125, 125]))).toBe('beyond');
  });

  it('RCH-P5: 55 × 100 lets a flat hand in at 165 deep; 40 × 100 lets in fingers only, which reach nothing here', () => {
    expect(reachOf(165, admits([55, 100]))).toBe('hand');
    expect(admits([40, 100])).toBe('nothing');
    expect(reachOf(10, admits([40, 100]))).toBe('beyond');
  });

  it('RCH-M05, RCH-M06: forearm from 100 × 115, arm from 125 × 125 (MIL-STD-1472, from memory)', () => {
    expect(admits([115, 100])).toBe('forearm');
    expect(admits([99, 300])).toBe('hand');
    expect(admits([124, 400])).toBe('forearm');
    expect(admits([125, 400])).toBe('arm');
  });

  it('never grows with distance nor shrinks with the opening, and does not care which side is named first', () => {
    const order = ['hand', 'forearm', 'arm', 'beyond'];
    const side = fc.integer({ min: 0, max: 400 });
    fc.assert(
      fc.property(side, side, side, fc.integer({ min: 0, max: 900 }), (a, b, more, deep) => {
        expect(admits([a, b])).toBe(admits([b, a]));
        expect(limitMm(admits([a + more, b]))).toBeGreaterThanOrEqual(limitMm(admits([a, b])));
        const near = order.indexOf(reachOf(deep, admits([a, b])));
        expect(order.indexOf(reachOf(deep + more, admits([a, b])))).toBeGreaterThanOrEqual(near);
      }),
    );
  });
});
