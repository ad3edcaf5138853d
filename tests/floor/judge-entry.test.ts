import { beforeAll, describe, expect, it } from 'vitest';
import { columnsOf } from '../../src/entry/columns.js';
import { floorCoach } from '../../src/floor/floor-coach.js';
import { formDraft } from '../../src/floor/form-draft.js';
import * as judge from '../../src/floor/judge-entry.js';
import { coachModel } from '../../src/floor/script/coach-model.js';
import { placeAt } from '../../src/model/place-at.js';
import type { Model } from '../../src/model/shell.js';
import type { Panel, Weld } from '../../src/records/index.js';
import { judged } from '../demo/store.js';

/** The half-built coach of the demo, with the mistakes that are planted in it: as a page carries it, through its JSON. */
let model: Model;
const { assessment } = judged('OV-024');
const { shell } = assessment.model;
beforeAll(() => {
  model = coachModel(JSON.parse(JSON.stringify(floorCoach(assessment))));
});

/** Ids that `check` names first in findings of a rule. */
const found = (rule: string, severity?: string): readonly string[] =>
  [
    ...new Set(
      assessment.findings
        .filter((one) => one.rule === rule && (severity ?? one.severity) === one.severity)
        .map(({ ids }) => ids[0] as string),
    ),
  ].sort();
/** Ids for which the page says a sentence while the record is entered. */
function said<T extends { readonly id: string }>(
  all: readonly T[],
  key: string,
  of: (one: T) => readonly judge.EntryWarning[],
): readonly string[] {
  return all
    .filter((one) => of(one).some((warning) => warning.key.startsWith(key)))
    .map(({ id }) => id)
    .sort();
}

describe('what the page says while something is entered', () => {
  const weld = (one: Weld) => judge.weldWarnings(one, model);
  const looks = ({ inspections, ...one }: Weld) =>
    inspections.flatMap((look, i) => judge.lookWarnings(look, { ...one, inspections: inspections.slice(0, i) }, model));

  it.each([
    ['weld.welder-unqualified', 'floor.tap.unqualified', () => said(shell.welds, 'floor.tap.unqualified', weld)],
    ['weld.inspector-unqualified', 'floor.tap.noeye', () => said(shell.welds, 'floor.tap.noeye', looks)],
    ['weld.own-inspection', 'floor.tap.own', () => said(shell.welds, 'floor.tap.own', looks)],
    ['panel.bond-dew-point', 'floor.tap.dew', () => said(shell.panels, 'floor.tap.dew', (one) => judge.bondWarnings(one, model))],
    [
      'order.adhesive-expired',
      'floor.tap.expired',
      () => said(shell.panels, 'floor.tap.expired', (one) => judge.bondWarnings(one, model)),
    ],
    [
      'order.instrument-out-of-calibration',
      'floor.tap.gauge',
      () => said(shell.tests, 'floor.tap.gauge', (one) => judge.testWarnings(one, model)),
    ],
    ['test.failed', 'floor.tap.failed', () => said(shell.tests, 'floor.tap.failed', (one) => judge.testWarnings(one, model))],
    [
      'weight.scale-out-of-calibration',
      'floor.tap.gauge',
      () => said(shell.tickets, 'floor.tap.gauge', (one) => judge.ticketWarnings(one, model)),
    ],
    [
      'service.outside-envelope',
      'floor.tap.outside',
      () => [
        ...said(shell.nodes, 'floor.tap.outside', (one) => judge.nodeWarnings(one, [], model)),
        ...said(shell.runs, 'floor.tap.outside', (one) => judge.runWarnings(one, model)),
      ],
    ],
    [
      'service.mirrored',
      'floor.tap.mirrored',
      () => said(shell.nodes, 'floor.tap.mirrored', (one) => judge.nodeWarnings(one, [], model)),
    ],
  ])('is what check finds afterwards: %s', (rule, _key, page) => {
    expect(page()).toEqual(found(rule));
  });

  it('is found in the demo, where it is planted', () => {
    const rules = ['weld.welder-unqualified', 'panel.bond-dew-point', 'order.adhesive-expired', 'test.failed'];
    expect(rules.filter((rule) => found(rule).length === 0)).toEqual([]);
  });

  it('names the procedure that does not cover a weld, a bond closed too late, a cavity that a run never enters', () => {
    const uncovered = said(shell.welds, 'floor.tap.uncovered', weld);
    expect(uncovered).toEqual(found('weld.procedure-does-not-cover', 'error'));
    const bond = (one: Panel) => judge.bondWarnings(one, model);
    expect(
      [...new Set([...said(shell.panels, 'floor.tap.open', bond), ...said(shell.panels, 'floor.tap.cure', bond)])].sort(),
    ).toEqual(found('panel.bond-time'));
    // Of the ends and way points alone: a way that hangs on nodes without a place is not judged.
    expect(said(shell.runs, 'floor.tap.never', (one) => judge.runWarnings(one, model))).toEqual(
      found('service.outside-zone', 'warning'),
    );
  });

  it('tells a place on the wrong side, far off, twice, and how far it is from what the tape was held to', () => {
    const panel = shell.panels.find(({ panelKind, outline }) => panelKind === 'access' && outline.every(([, y]) => y < -300));
    const on = panel ?? shell.panels.find(({ outline }) => outline.every(([, y]) => y < -300));
    if (!on) throw new Error('no panel on the left');
    const [x, y, z] = on.outline[0] as readonly [number, number, number];
    const keys = (at: readonly [number, number, number]) =>
      judge.nodeWarnings({ id: 'N', at, panel: on.id, service: 'x', nodeKind: 'splice' }, [on.id], model).map(({ key }) => key);
    expect(keys([x, y + 20, z])).toEqual(['floor.tap.away']);
    expect(keys([x, -y, z])).toEqual(['floor.tap.mirrored', 'floor.tap.away']);
    expect(keys([x * 25.4, y, z]).join(' ')).toMatch(/^floor\.tap\.outside\.(?:feet|inches)/u);
    const [first] = shell.nodes.filter(({ at }) => at !== undefined);
    const twin = judge.nodeWarnings({ ...first, id: 'N' }, [], model);
    expect(twin.find(({ key }) => key === 'floor.tap.twin')?.values).toEqual({ id: first?.id });
  });
});

describe('a form that is half filled in', () => {
  const draft = (fields: Readonly<Record<string, string>>) => formDraft('weld', columnsOf('weld'), (key) => fields[key] ?? '');

  it('is read field by field as the model has it, in SI; what cannot be read yet is left out', () => {
    expect(draft({ size: '1/4 in', length: '10', welder: 'K7', joins: 'A, B' })).toMatchObject({ sizeMm: 6.35, welder: 'K7' });
    expect(draft({ length: '10' })).not.toHaveProperty('lengthMm');
    expect(
      formDraft('bond', columnsOf('panel'), (key) => ({ 'bond.surface': '12 C', 'fixing.lot': 'B-1' })[key] ?? ''),
    ).toMatchObject({
      bond: { surfaceK: 285.15 },
      fixing: { lot: 'B-1' },
    });
  });
});

describe('the coach on the page', () => {
  it('gives a tape the same place as the record does', () => {
    const [panel] = shell.panels.filter(({ panelKind }) => panelKind === 'skin');
    const [member] = shell.members;
    const typed = `12 in aft of ${member?.id}, 2 in right of ${panel?.id}, 40 in`;
    expect(placeAt(typed, model)).toEqual(placeAt(typed, assessment.model));
  });
});
