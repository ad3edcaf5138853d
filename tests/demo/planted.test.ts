import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { RULES } from '../../src/rules/index.js';
import { judged } from './store.js';

interface Plant {
  readonly rule: string;
  readonly ids: readonly string[];
  readonly file: string;
  readonly what: string;
  /** Found only with what lies beside the records: see honesty.test.ts. */
  readonly needs?: 'history' | 'photos';
}

const PLANTED = parse(readFileSync(new URL('planted.yaml', import.meta.url), 'utf8')) as readonly Plant[];
const known = new Set(RULES.map((rule) => rule.name));
const areas = (...names: readonly string[]): readonly Plant[] =>
  PLANTED.filter((plant) => names.includes(plant.rule.split('.')[0] as string));

describe('the half-built demo shell', () => {
  let one: ReturnType<typeof judged>;
  beforeAll(() => {
    one = judged('OV-024');
  });

  it('is half built and smaller', () => {
    const { shell } = one.assessment.model;
    expect(shell.members.length).toBeGreaterThanOrEqual(150);
    expect(shell.welds.length).toBeGreaterThanOrEqual(180);
    expect(shell.panels.length).toBeGreaterThanOrEqual(30);
    expect(shell.runs.length).toBeGreaterThanOrEqual(50);
    const trusses = shell.members.filter((member) => member.part === 'truss top chord');
    expect(trusses.length).toBe(5);
  });

  it('carries mistakes of every kind', () => {
    expect(areas('service', 'access').length).toBeGreaterThanOrEqual(12);
    expect(areas('member', 'weld', 'opening', 'panel', 'order', 'test', 'finding').length).toBeGreaterThanOrEqual(10);
    expect(areas('weight', 'shell').length).toBeGreaterThanOrEqual(3);
  });

  it.each(
    PLANTED.filter((plant) => known.has(plant.rule) && plant.needs === undefined).map((plant) => [plant.rule, plant] as const),
  )('%s is found', (rule, plant) => {
    const found = one.findings.filter((finding) => finding.rule === rule && plant.ids.every((id) => finding.ids.includes(id)));
    expect(
      found.map((finding) => finding.severity),
      plant.what,
    ).not.toEqual([]);
    // What the rule can only point out stays a note.
    const severity = RULES.find((one) => one.name === rule)?.severity;
    expect(found.some((finding) => finding.severity !== 'note')).toBe(severity !== 'note');
    expect(found[0]?.place.file.startsWith('shells/OV-024/')).toBe(true);
  });

  it('has rules for nearly all of what was planted', () => {
    expect(PLANTED.filter((plant) => known.has(plant.rule)).length).toBeGreaterThanOrEqual(40);
  });

  it('has no error and no undecided warning of a rule that nothing was planted for, but what follows from a planted one', () => {
    const planted = new Set(PLANTED.map((plant) => plant.rule));
    const others = one.findings.filter(
      (finding) => finding.severity !== 'note' && finding.decidedBy === undefined && !planted.has(finding.rule),
    );
    // The only ticket that can be used is of the subframe: everything since is unweighed. The gas test that was copied from the first
    // shell is older than the line that it is said to be of.
    expect([...new Set(others.map((finding) => finding.rule))]).toEqual(['weight.ticket-stale', 'order.evidence-stale']);
    const stale = others.filter((finding) => finding.rule === 'order.evidence-stale');
    expect(stale.every((finding) => finding.ids.includes('TS-208'))).toBe(true);
  });
});
