import { describe, expect, it } from 'vitest';
import { inspectionShares, jointClass } from '../../../src/compute/welding/inspection.js';
import { weldTotals } from '../../../src/compute/welding/totals.js';
import type { Inspection, Person, Weld } from '../../../src/records/index.js';
import { inspectionOrder } from '../../../src/rules/weld/inspection-order.js';
import { inspectionShare } from '../../../src/rules/weld/inspection-share.js';
import { inspectorUnqualified } from '../../../src/rules/weld/inspector-unqualified.js';
import { buildModel, record } from '../../support/build.js';
import { blaming, judgeStructure } from '../../support/judge-structure.js';
import { flatPanel, lineMember, sections, weld } from '../../support/structure.js';

const look = (more: Partial<Inspection> = {}): Inspection => ({
  method: 'VT',
  by: 'J2',
  date: '2026-02-12',
  result: 'accept',
  ...more,
});
const person = (qualified: Person['qualified']): Person => ({ ...record('J2'), name: 'Inspector', role: 'inspector', qualified });
const vt = { method: 'VT', positions: [], groups: [], from: '2024-01-15', until: '2027-01-15' };

const model = (
  welds: readonly Weld[],
  more: { qualified?: Person['qualified']; inspection?: Parameters<typeof buildModel>[2]; signed?: boolean } = {},
) =>
  buildModel(
    {
      members: [
        lineMember('A', [0, 0, 0], [500, 0, 0], { stage: 'floor' }),
        lineMember('B', [0, 0, 50], [500, 0, 50], { stage: 'floor' }),
        { ...lineMember('C', [0, 0, 100], [500, 0, 100]), memberClass: 'secondary' },
      ],
      panels: [flatPanel('P', 25)],
      welds,
      signoffs: more.signed ? [{ ...record('S'), stage: 'floor', role: 'lead', by: 'J2', date: '2026-03-01' }] : [],
    },
    { sections, people: new Map([['J2', person(more.qualified ?? [vt])]]) },
    more.inspection,
  );
const W = (id: string, inspections: readonly Inspection[], more: Partial<Weld> = {}) =>
  weld(id, [['A', 'B']], { welder: 'K7', date: '2026-02-11', inspections, ...more });

describe('jointClass', () => {
  it.each([
    ['primary', ['A', 'B']],
    ['secondary', ['A', 'C']],
    ['secondary', ['A', 'P']],
  ] as const)('%s: %s', (expected, joins) => expect(jointClass(weld('W', [joins]), model([]))).toBe(expected));
});

describe('inspectionShares', () => {
  it('counts joints, not records, and only what the last look accepted', () => {
    const shares = inspectionShares(
      model([
        weld(
          'W1',
          [
            ['A', 'B'],
            ['B', 'A'],
            ['A', 'B'],
          ],
          { inspections: [look(), look({ method: 'pt' })] },
        ),
        W('W2', [look(), look({ result: 'reject' })]),
        weld('W3', [['A', 'C']], { inspections: [look()] }),
      ]),
    );
    expect(shares).toEqual([
      { jointClass: 'primary', method: 'VT', joints: 4, accepted: 3, share: 0.75, required: 1 },
      { jointClass: 'primary', method: 'PT', joints: 4, accepted: 3, share: 0.75, required: undefined },
      { jointClass: 'secondary', method: 'VT', joints: 1, accepted: 1, share: 1, required: 1 },
    ]);
  });
});

describe('weld.inspection-share', () => {
  const welds = [W('W1', [look(), look({ method: 'PT' })]), W('W2', [look()]), W('W3', [look()]), W('W4', [look()])];
  const judged = (share: number, signed = true) =>
    judgeStructure(
      inspectionShare,
      model(welds, { signed, inspection: { inspection: { primary: { PT: share }, secondary: {} } } }),
    );

  it('is met at the share, short beyond it', () => {
    expect(judged(0.25)).toEqual([]);
    const [found] = judged(0.26);
    expect(found).toMatchObject({ severity: 'warning', ids: ['W2', 'W3', 'W4'] });
    expect(found?.message).toContain('1 of 4 primary joints are accepted by PT (25.0 %), expected 26.0 %');
  });

  it('waits until the stage is signed off', () => expect(judged(1, false)).toEqual([]));

  it('wants visual of all where the shop says nothing: a dye test alone will not do', () => {
    const found = judgeStructure(
      inspectionShare,
      model([W('W1', [look({ method: 'PT' })]), W('W2', [look()])], { signed: true }),
    );
    expect(found.map(({ ids }) => ids)).toEqual([['W1']]);
  });

  it('leaves what nobody looked at, and what is rejected, to their own rules', () => {
    expect(
      judgeStructure(inspectionShare, model([W('W1', []), W('W2', [look({ result: 'reject' })])], { signed: true })),
    ).toEqual([]);
  });
});

describe('weld.inspector-unqualified', () => {
  const judged = (inspection: Partial<Inspection>, qualified: Person['qualified'] = [vt]) =>
    judgeStructure(inspectorUnqualified, model([W('W1', [look(inspection)])], { qualified }));

  it('the first and last day of the qualification are within', () => {
    expect(judged({ date: '2024-01-15' })).toEqual([]);
    expect(judged({ date: '2027-01-15' })).toEqual([]);
    expect(judged({ date: '2027-01-16' })[0]).toMatchObject({ severity: 'error', ids: ['W1', 'J2'] });
    expect(judged({ date: '2024-01-14' }).length).toBe(1);
  });

  it('wants the method that was used, whatever its letters', () => {
    expect(judged({ method: 'vt' })).toEqual([]);
    expect(judged({ method: 'PT' })[0]?.message).toContain('has no PT');
    expect(judged({}, [])[0]?.message).toContain('has no VT');
  });

  it('does not judge a reject, nor the welder’s own look, which has its own rule', () => {
    expect(judged({ method: 'PT', result: 'reject' })).toEqual([]);
    expect(judgeStructure(inspectorUnqualified, model([W('W1', [look()], { welder: 'J2' })], { qualified: [] }))).toEqual([]);
  });
});

describe('weld.inspection-order', () => {
  const judged = (...inspections: readonly Inspection[]) => {
    const fields: string[] = [];
    const found = judgeStructure(inspectionOrder, model([W('W1', inspections, { source: blaming(fields) })]));
    return { fields, messages: found.map(({ message }) => message) };
  };

  it('a reject, a repair and a second look in order are quiet', () => {
    expect(judged(look({ result: 'reject' }), look({ date: '2026-02-13', repair: 1 })).messages).toEqual([]);
    expect(judged(look({ date: '2026-02-11' })).messages).toEqual([]);
  });

  it.each([
    ['before it was made', [look({ date: '2026-02-10' })], 'inspections.0.date'],
    ['before the look above it', [look(), look({ date: '2026-02-11' })], 'inspections.1.date'],
    ['after a reject', [look({ result: 'reject' }), look({ date: '2026-02-13' })], 'inspections.1.repair'],
  ] as const)('a look %s is told', (words, inspections, field) => {
    const { fields, messages } = judged(...inspections);
    expect(messages.length).toBe(1);
    expect(messages[0]).toContain(words);
    expect(fields).toEqual([field]);
  });
});

describe('repair rate', () => {
  it('is the share of inspected welds that were rejected at least once, by process', () => {
    const { byProcess } = weldTotals(
      model([
        W('W1', [look()]),
        W('W2', [look({ result: 'reject' }), look({ result: 'reject' }), look({ repair: 2 })]),
        W('W3', []),
        W('W4', [look()], { process: 'GTAW' }),
      ]),
    );
    expect(byProcess.GMAW).toMatchObject({ count: 3, inspected: 2, rejected: 1, rejects: 2, repairs: 2, repairRate: 0.5 });
    expect(byProcess.GTAW).toMatchObject({ inspected: 1, rejected: 0, repairRate: 0 });
  });
});
