import { beforeAll, describe, expect, it } from 'vitest';
import { isolate } from '../../src/query/isolate/index.js';
import { isSource } from '../../src/query/isolate/roles.js';
import { judged } from './store.js';

describe('isolation on the finished demo shell', () => {
  let assessment: ReturnType<typeof judged>['assessment'];
  beforeAll(() => {
    assessment = judged('OV-021').assessment;
  });

  it('leaves no source on any circuit, and proves it', () => {
    const { shell } = assessment.model;
    const answers = shell.circuits.map((circuit) => isolate(assessment, circuit.id));
    expect(answers.filter((one) => !one?.verified || one.sourcesLeft.length > 0).map((one) => one?.id)).toEqual([]);
    // The earth bonds of the negative bar come off with the batteries; nothing is opened twice.
    for (const one of answers)
      expect(new Set(one?.actions.map((action) => `${action.id} ${action.circuit}`)).size).toBe(one?.actions.length);
  });

  it('leaves on a source nothing but the source itself', () => {
    const sources = assessment.model.shell.nodes.filter(isSource);
    expect(sources.length).toBeGreaterThan(10);
    const left = sources.flatMap(({ id }) => (isolate(assessment, id)?.sourcesLeft ?? []).filter((other) => other !== id));
    expect(left).toEqual([]);
  });

  it('never opens a source as if it were a switch', () => {
    const { shell } = assessment.model;
    const sources = new Set(shell.nodes.filter(isSource).map((node) => node.id));
    const opened = shell.circuits.flatMap(
      ({ id }) => isolate(assessment, id)?.actions.filter((one) => one.action === 'open') ?? [],
    );
    expect(opened.filter((one) => sources.has(one.id))).toEqual([]);
  });

  it('says of batteries and solar that they stay live', () => {
    expect(isolate(assessment, 'DC-00')?.notes.join(' ')).toContain('BAT, SOL: never dead');
    expect(isolate(assessment, 'AC-SH')?.actions.map((one) => `${one.action} ${one.id}`)).toContain('disconnect SHORE');
  });
});
