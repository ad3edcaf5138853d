import { describe, expect, it } from 'vitest';
import type { Circuit, Conductor } from '../../../src/records/index.js';
import { circuit, node, run } from '../../support/services.js';
import { judged } from './judge.js';

const copper = (more: Partial<Conductor>): Conductor => ({ conductors: 2, material: 'copper', ratingC: 75, ...more });
const panel = node('P', [0, 0, 0], { nodeKind: 'panel' });
const lamp = node('L', [6000, 0, 0], { nodeKind: 'load' });
const one = (more: Partial<Circuit>) => ({
  circuits: [circuit('C', { voltageV: 12, conductor: copper({ awg: '14' }), ...more })],
  nodes: [panel, lamp],
  runs: [run('R', panel, lamp, [], { circuit: 'C', medium: more.medium ?? 'dc' })],
});
const fuse = (ratingA: number) => ({ protection: { kind: 'fuse', ratingA, at: 'P' } });

describe('service.voltage-drop', () => {
  it('WIR-41: 20 A over 6 m of 6 mm² at 12 V loses 6.4 %: a warning at 3 %, with volts and the load', () => {
    const [finding] = judged('service.voltage-drop', one({ loadA: 20, conductor: copper({ areaMm2: 6 }) }));
    expect(finding).toMatchObject({ severity: 'warning', ids: ['C', 'L'] });
    expect(finding?.message).toContain('0.77 V (6.4 %)');
    expect(finding?.message).toContain('at most 3.0 % of 12.0 V');
  });

  it('passes a short light circuit, and one whose load is not recorded', () => {
    expect(judged('service.voltage-drop', one({ loadA: 1 }))).toEqual([]);
    expect(judged('service.voltage-drop', one({}))).toEqual([]);
  });
});

describe('service.protection-too-large', () => {
  it('WIR-24: 14 AWG at 75 °C carries 20 A: 25 A is an error', () => {
    const [finding] = judged('service.protection-too-large', one(fuse(25)));
    expect(finding).toMatchObject({ severity: 'error', ids: ['C', 'R'] });
    expect(finding?.message).toContain('25 A fuse on 14 AWG');
  });

  it('WIR-62 (from memory): over 15 A on 14 AWG at low voltage is a warning, WIR-43 (from memory) on mains an error', () => {
    expect(judged('service.protection-too-large', one(fuse(20)))[0]?.severity).toBe('warning');
    expect(judged('service.protection-too-large', one({ ...fuse(20), medium: 'ac' }))[0]?.severity).toBe('error');
    expect(judged('service.protection-too-large', one(fuse(15)))).toEqual([]);
  });

  it('the smallest conductor on the way rules', () => {
    const middle = node('M', [3000, 0, 0]);
    const shell = {
      circuits: [circuit('C', { conductor: copper({ awg: '10' }), ...fuse(30) })],
      nodes: [panel, middle, lamp],
      runs: [
        run('R1', panel, middle, [], { circuit: 'C' }),
        run('R2', middle, lamp, [], { circuit: 'C', conductor: copper({ awg: '16' }) }),
      ],
    };
    const [finding] = judged('service.protection-too-large', shell);
    expect(finding?.ids).toEqual(['C', 'R2']);
    expect(finding?.message).toContain('16 AWG (R2), expected at most 8 A');
  });

  it('the next standard rating above an ampacity is a warning: WIR-44, 65 A wire behind 70 A', () => {
    const wire = copper({ awg: '6' });
    expect(judged('service.protection-too-large', one({ conductor: wire, ...fuse(70) }))[0]?.severity).toBe('warning');
    expect(judged('service.protection-too-large', one({ conductor: wire, ...fuse(80) }))[0]?.severity).toBe('error');
    expect(judged('service.protection-too-large', one({ conductor: wire, ...fuse(60) }))).toEqual([]);
  });

  it('WIR-46: wires that lie together make it a warning', () => {
    const ways = [0, 1, 2].map((i) =>
      run(
        `R${i}`,
        panel,
        lamp,
        [
          [10, i * 10, 0],
          [5990, i * 10, 0],
        ],
        { circuit: `C${i}` },
      ),
    );
    const circuits = [0, 1, 2].map((i) => circuit(`C${i}`, { conductor: copper({ awg: '8' }), ...(i === 0 ? fuse(50) : {}) }));
    // Six conductors: 50 A × 0.80
    const [finding] = judged('service.protection-too-large', { circuits, nodes: [panel, lamp], runs: ways });
    expect(finding?.severity).toBe('warning');
    expect(finding?.message).toContain('at most 40 A with 6 current-carrying conductors');
  });
});

describe('service.no-protection, service.protection-below-load', () => {
  it('asks for the fuse of a wire, not of a pipe', () => {
    expect(judged('service.no-protection', one({}))[0]).toMatchObject({ severity: 'warning', ids: ['C'] });
    expect(judged('service.no-protection', one({ protection: { kind: 'breaker' } }))[0]?.message).toContain('without a rating');
    expect(judged('service.no-protection', one(fuse(15)))).toEqual([]);
    expect(judged('service.no-protection', one({ medium: 'water' }))).toEqual([]);
  });

  it('tells a load that its fuse will not pass', () => {
    expect(judged('service.protection-below-load', one({ loadA: 16, ...fuse(15) }))[0]?.ids).toEqual(['C']);
    expect(judged('service.protection-below-load', one({ loadA: 15, ...fuse(15) }))).toEqual([]);
  });
});
