import { describe, expect, it } from 'vitest';
import { drainPlan } from '../../../src/query/lookup/draining.js';
import { answerTopic, topicsOf } from '../../../src/query/topics/index.js';
import type { NodeKind, ServiceNode, Tank } from '../../../src/records/index.js';
import { readerOf, say } from '../../../src/words/index.js';
import { circuit, node, run } from '../../support/services.js';
import { assessment } from './assessment.js';

const wet = (id: string, nodeKind: NodeKind, at: readonly [number, number, number], more = {}) =>
  node(id, at, { nodeKind, medium: 'water', ...more });

/** Tank, valve, pump; a crown between a front drain and a lower rear drain; a tap. */
function line() {
  const out = wet('OUT', 'source', [0, 0, 900], { role: 'tank', of: ['FRESH'] });
  const valve = wet('V', 'valve', [0, 0, 880], { position: 'normally open' });
  const pump = wet('P', 'device', [0, 0, 870], { role: 'pump' });
  const crown = wet('T', 'fitting', [0, 0, 500]);
  const front = wet('D-F', 'drain', [-5000, 0, 400]);
  const rear = wet('D-R', 'drain', [20000, 0, 300]);
  const tap = wet('TAP', 'load', [0, 0, 1200]);
  const size = { text: '19 mm hose', nominalMm: 19, material: 'hose' };
  const tank: Tank = { id: 'FRESH', contents: 'water', capacityM3: 0.2, at: [0, 0, 900], densityKgM3: 1000 };
  return {
    tanks: [tank],
    circuits: [circuit('WC', { medium: 'water', size })],
    nodes: [out, valve, pump, crown, front, rear, tap],
    runs: [
      run('1', out, valve, [], { circuit: 'WC' }),
      run('2', valve, pump, [], { circuit: 'WC' }),
      run('3', pump, crown, [], { circuit: 'WC' }),
      run('F', crown, front, [], { circuit: 'WC' }),
      run('R', crown, rear, [], { circuit: 'WC' }),
      run('T', crown, tap, [], { circuit: 'WC' }),
    ],
  };
}

describe('drainPlan', () => {
  const plan = drainPlan(assessment(line()));

  it('shuts the supply, opens the tap, then the drains with the lowest last, runs the pump, and empties the tank at the end', () => {
    expect(plan.steps.map((one) => `${one.do} ${one.id}`)).toEqual([
      'switch off P',
      'shut V',
      'open TAP',
      'drain D-F',
      'drain D-R',
      'run P',
      'open V',
    ]);
  });

  it('FLU-36: 20 m of 19 mm bore holds 5.6706 L; each drain empties its own side of the crown', () => {
    const at = (id: string): number => plan.steps.find((one) => one.id === id && one.do === 'drain')?.litres ?? 0;
    // The way down from the crown is a hair longer than 20 m; what stands above the crown goes to the nearer drain.
    const bore = (Math.PI / 4) * 19 ** 2 * 1e-6;
    const slope = Math.hypot(20000, 200);
    expect(at('D-R')).toBeCloseTo((5.6706 * slope) / 20000, 3);
    expect(at('D-F')).toBeCloseTo(bore * (Math.hypot(5000, 100) + 400 + 700), 3);
    expect(plan.steps.at(-1)?.litres).toBe(200);
    expect(plan.kept).toEqual([]);
  });

  it('a waste tank runs out through its node and valve; a pipe that falls into its tank traps nothing', () => {
    const size = { text: '38 mm ABS', nominalMm: 38, material: 'ABS' };
    const waste = (
      id: string,
      nodeKind: ServiceNode['nodeKind'],
      at: [number, number, number],
      more: Partial<ServiceNode> = {},
    ) => node(id, at, { medium: 'drain', nodeKind, ...more });
    const [sink, into, out, valve, spout] = [
      waste('SINK', 'load', [0, 0, 900]),
      waste('IN', 'fitting', [1000, 0, 100], { role: 'tank', of: ['GREY'] }),
      waste('OUT', 'fitting', [1200, 0, 0], { role: 'tank', of: ['GREY'] }),
      waste('DV', 'valve', [1500, 0, -10], { role: 'shut-off' }),
      waste('SPOUT', 'drain', [1800, 0, -20]),
    ];
    const grey: Tank = { id: 'GREY', contents: 'grey', capacityM3: 0.15, at: [1100, 0, 100], densityKgM3: 1000 };
    const given = assessment({
      tanks: [grey],
      circuits: [circuit('W', { medium: 'drain', size })],
      nodes: [sink, into, out, valve, spout],
      runs: [
        run('W1', sink, into, [], { circuit: 'W' }),
        run('W2', out, valve, [], { circuit: 'W' }),
        run('W3', valve, spout, [], { circuit: 'W' }),
      ],
    });
    const { steps, kept } = drainPlan(given);
    expect(steps.map((one) => `${one.do} ${one.id}`)).toEqual(['open DV', 'drain SPOUT']);
    // The tank's own 150 L, and what stands in 600 mm of pipe.
    expect(steps.at(-1)?.litres).toBeGreaterThan(150);
    expect(kept).toEqual([]);
  });

  it('says that lines without a drain hold their water', () => {
    const { nodes, runs, ...rest } = line();
    const none = drainPlan(
      assessment({
        ...rest,
        nodes: nodes.filter((one) => one.nodeKind !== 'drain'),
        runs: runs.filter((one) => one.id !== 'F' && one.id !== 'R'),
      }),
    );
    expect(none.notes[0]).toContain('No drain is recorded');
    expect(drainPlan(assessment({})).notes).toEqual(['No water or waste line is recorded.']);
  });
});

describe('questions about the whole shell', () => {
  const names = (query: string): readonly string[] => topicsOf(query).map((topic) => topic.name);

  it('are known by their words, whatever stands around them, and with a slip', () => {
    expect(names('where are ALL the fuses?')).toEqual(['fuses']);
    expect(names('in-line fuses')).toEqual(['fuses']);
    expect(names('What is live if I kill the main?')).toEqual(['live']);
    expect(names('how do I drain it for frost')).toEqual(['frost']);
    expect(names('torqe')).toEqual(['torque']);
    expect(names('spare')).toEqual(['spare conduits', 'unused wires']);
    expect(names('which wires are abandoned or spare')).toEqual(['unused wires']);
    expect(names('Is this the right book?')).toEqual(['book']);
  });

  it('are asked in the words of the book’s contents', () => {
    const [torque] = topicsOf('torque').map((topic) => answerTopic(assessment({}), topic));
    expect(torque?.question).toBe(say(readerOf({}), 'find.torque'));
  });

  it('are not known where one word is none of theirs', () => {
    expect(names('water pump fuse')).toEqual([]);
    expect(names('where is it')).toEqual([]);
    expect(names('')).toEqual([]);
  });

  it('never infer a rating: what nobody declared is told so', () => {
    const answers = (query: string) => topicsOf(query).map((topic) => answerTopic(assessment({}), topic));
    const said = answers('where may I jack it')
      .flatMap((topic) => topic.rows.map((row) => row.what))
      .join('\n');
    expect(said).toContain('jack: not declared');
    const roof = answers('roof')[0];
    expect(roof?.notes.join(' ')).toContain('keep off the roof');
  });
});
