import { describe, expect, it } from 'vitest';
import type { Joint } from '../../../src/compute/structure/types.js';
import { baseParts, thinnerMm, wallMm } from '../../../src/compute/welding/base.js';
import { continuityGaps } from '../../../src/compute/welding/continuity.js';
import { depositKg, fillerDensityKgM3 } from '../../../src/compute/welding/deposit.js';
import { selectionRows, unsuitedFiller } from '../../../src/compute/welding/filler.js';
import { acceptedBy, inspectionShares, outOfOrder } from '../../../src/compute/welding/inspection.js';
import { uncovered } from '../../../src/compute/welding/procedure.js';
import { inRange, qualified } from '../../../src/compute/welding/qualification.js';
import { weldTotals } from '../../../src/compute/welding/totals.js';
import { heatAffectedMetal, heatAffectedZones } from '../../../src/compute/welding/weld-bands.js';
import type { Inspection, Person, Procedure, Qualification, Section, Weld } from '../../../src/records/index.js';
import { aluminium, buildModel, record, section } from '../../support/build.js';
import { flatPanel, lineMember, plateMember, weld } from '../../support/structure.js';

const tube = (wall: number) =>
  section('RT50', { shape: 'rectangular tube', depthMm: 50, widthMm: 50, wallMm: wall, cornerRadiusMm: 0 });
const members = [lineMember('A', [0, 0, 0], [500, 0, 0]), lineMember('B', [0, 25, 0], [0, 500, 0])];

describe('what a weld joins', () => {
  /** What else a shape has does not matter here. */
  const walls: readonly (readonly [Partial<Section['dimensions']>, number | undefined])[] = [
    [{ shape: 'rectangular tube', depthMm: 90, widthMm: 40, wallMm: 5, cornerRadiusMm: 0 }, 5],
    [{ shape: 'double hollow', depthMm: 90, widthMm: 40, wallMm: 4, webMm: 3 }, 4],
    [{ shape: 'round tube', diameterMm: 40, wallMm: 2 }, 2],
    [{ shape: 'angle', depthMm: 50, widthMm: 40, wallMm: 6 }, 6],
    [{ shape: 'I-beam', depthMm: 90, widthMm: 40, webMm: 5, flangeMm: 8 }, 5],
    [{ shape: 'channel', depthMm: 90, widthMm: 40, webMm: 9, flangeMm: 7 }, 7],
    [{ shape: 'tee', depthMm: 90, widthMm: 40, webMm: 5, flangeMm: 8 }, 5],
    [{ shape: 'flat bar', depthMm: 60, widthMm: 8 }, 8],
    [{ shape: 'round bar', diameterMm: 12 }, 12],
    [{ shape: 'custom', areaMm2: 500, depthMm: 50, widthMm: 50 } as Partial<Section['dimensions']>, undefined],
  ];
  it.each(walls)('burns through first where it is thinnest: %o', (dimensions, thinnest) => {
    const one = lineMember('M', [0, 0, 0], [1, 0, 0], { section: 'S' });
    const library = buildModel({}, { sections: new Map([['S', section('S', dimensions as Section['dimensions'])]]) }).library;
    expect(wallMm(one, library)).toBe(thinnest);
  });

  it('WLD-49: the thinner part counts, a panel as well as a member, each once; what is neither is left out', () => {
    const model = buildModel(
      { members: [...members, plateMember('G', [[0, 0, 0]], 8)], panels: [flatPanel('P', 25)] },
      { sections: new Map([['RT50', tube(4)]]) },
    );
    const parts = baseParts(
      weld('W', [
        ['A', 'P'],
        ['A', 'G'],
        ['A', 'nowhere'],
      ]),
      model,
    );
    expect(parts).toEqual([
      { id: 'A', alloy: '6061-T6', thicknessMm: 4 },
      { id: 'P', alloy: '6061-T6', thicknessMm: 1 },
      { id: 'G', alloy: '6061-T6', thicknessMm: 8 },
    ]);
    expect(thinnerMm(parts)).toBe(1);
    expect(thinnerMm([{ id: 'X' }])).toBeUndefined();
    expect(baseParts(weld('W', [['A', 'B']]), buildModel({ members }))[0]?.thicknessMm).toBeUndefined();
  });
});

describe('filler laid', () => {
  /** MAT-03: 5356 has 2640 kg/m³ (Aluminum Association nominal densities). */
  const depositMm3 = (one: Weld, thinner: number | undefined): number =>
    depositKg({ ...one, filler: 'ER5356' }, thinner) / 2640e-9;

  // Areas of plane figures: computed; the angles and the gap of 1 mm are project defaults.
  it.each([
    ['fillet', {}, undefined, (6 * 6) / 2],
    ['flare', {}, undefined, (6 * 6) / 2],
    ['square groove', {}, undefined, 6 * 1],
    // Half a square, and two halves of an equilateral triangle of height 6: base 2 · 6 · tan 30°
    ['bevel groove', {}, undefined, (6 * 6) / 2 + 6],
    ['V groove', {}, undefined, (6 * (2 * 6 * (1 / Math.sqrt(3)))) / 2 + 6],
    ['seam', {}, 5, 0],
    ['fillet', { sides: 'both' }, undefined, 6 * 6],
    ['fillet', { sides: 'other' }, undefined, (6 * 6) / 2],
  ] as const)('%s %o: area × length', (type, more, thinner, areaMm2) => {
    expect(depositMm3(weld('W', [['A', 'B']], { type, sizeMm: 6, lengthMm: 250, ...more }), thinner)).toBeCloseTo(
      areaMm2 * 250,
      6,
    );
  });

  it('a plug is the cylinder through the thinner part, whatever its length', () => {
    const plug = (more: Partial<Weld>, thinner?: number) =>
      depositMm3(weld('W', [['A', 'B']], { type: 'plug', sizeMm: 10, ...more }), thinner);
    expect(plug({}, 3)).toBeCloseTo(Math.PI * 25 * 3, 9);
    expect(plug({ sides: 'both', lengthMm: 999 }, 3)).toBeCloseTo(2 * Math.PI * 25 * 3, 9);
    expect(plug({})).toBe(0);
  });

  it('its density is by the number in its name; no steel is read out of another name', () => {
    expect(fillerDensityKgM3('ER308L')).toBe(7850);
    expect(fillerDensityKgM3('OTHER90')).toBe(2660);
    expect(fillerDensityKgM3()).toBe(2660);
  });

  it('is the same whatever the thickness it is laid on, but for a plug', () => {
    const totals = (one: Partial<Weld>) =>
      weldTotals(
        buildModel(
          { members, welds: [weld('W', [['A', 'B']], { filler: 'ER5356', lengthMm: 1000, ...one })] },
          { sections: new Map([['RT50', tube(4)]]) },
        ),
      );
    // WLD-11: 47.52 g/m
    expect(totals({}).depositedKg).toBeCloseTo(0.04752, 9);
    expect(totals({ type: 'plug', sizeMm: 10 }).depositedKg).toBeCloseTo(Math.PI * 25 * 4 * 2640e-9, 12);
  });
});

describe('a filler', () => {
  const judged = (
    filler: string | undefined,
    alloys: readonly (string | undefined)[],
    rows?: Parameters<typeof unsuitedFiller>[2],
  ) =>
    unsuitedFiller(
      weld('W', [['A', 'B']], { filler }),
      alloys.map((alloy, i) => ({ id: 'ABC'[i] as string, ...(alloy === undefined ? {} : { alloy }) })),
      rows,
    );

  it('for 6005A is 4043 or 5356: EN 1999-1-1 Table 8.8, from memory', () => {
    expect(judged('ER4043', ['6005A-T6'])).toBeUndefined();
    expect(judged('ER5356', ['6005A-T6'])).toBeUndefined();
    expect(judged('ER5554', ['6005A-T6'])).toMatchObject({ why: 'unlisted', suited: ['4043', '5356'] });
  });

  it('is judged by the parts whose alloy is known, and suits a joint that one row has it for', () => {
    expect(judged('ER5554', [undefined, 'mild steel', '6061-T6'])).toMatchObject({ part: 'C' });
    // WLD-28, WLD-30: 5556 with 5456, 5554 with 5454; neither row has both
    expect(judged('ER5556', ['5454-H34', '5456-H116'])).toBeUndefined();
    expect(judged(undefined, ['6061-T6'])).toBeUndefined();
    expect(judged('ER5554', [])).toBeUndefined();
  });

  it('where none suits both, those of the part blamed are offered', () => {
    const rows = { '3003': ['1100'], '6061': ['4043'], '7005': ['5356', '4043'] };
    expect(judged('ER5554', ['3003-H14', '6061-T6'], rows)?.suited).toEqual(['1100']);
    expect(judged('ER5554', ['7005-T53', '6061-T6', '3003-H14'], rows)?.suited).toEqual(['5356', '4043']);
    expect(judged('ER5554', ['7005-T53', '6061-T6'], rows)?.suited).toEqual(['4043']);
    // No row of its own: nothing to offer but what the others take.
    expect(judged('ER4043', ['5154-H34'], rows)).toEqual({ part: 'A', alloy: '5154-H34', why: 'silicon', suited: [] });
  });

  it('has no row of the shop’s without an alloy and a filler', () => {
    const packed = (limit: string | undefined, rule = 'weld.filler-unsuited') => ({ ...record('f'), rule, limit, pack: 'house' });
    const own = selectionRows([
      packed(undefined),
      packed('ask the engineer'),
      packed('6061'),
      packed('3003 with 1100', 'other.rule'),
    ]);
    expect(own).toEqual(selectionRows([]));
  });
});

describe('a procedure', () => {
  const procedure: Procedure = {
    ...record('WPS'),
    process: 'GMAW',
    types: ['fillet'],
    base: ['6061-T6'],
    thicknessMm: [3, 10],
    filler: ['ER5356'],
    positions: ['2F'],
  };
  const judged = (given: Partial<Weld>, changed: Partial<Procedure> = {}, wall = 4, alloy = '6061-T6') =>
    uncovered(
      weld('W', [['A', 'B']], { filler: 'ER5356', position: '2F', ...given }),
      { ...procedure, ...changed },
      buildModel({ members: members.map((one) => ({ ...one, alloy })) }, { sections: new Map([['RT50', tube(wall)]]) }),
      (mm) => `${mm} mm`,
    ).map(({ field, has, allowed }) => `${field}: ${has}, ${allowed}`);

  it('covers what lies within all of its lists and ranges', () => {
    expect(judged({})).toEqual([]);
    expect(judged({ process: '131', position: 'PB' })).toEqual([]);
    expect(judged({}, {}, 3)).toEqual([]);
    expect(judged({}, {}, 10)).toEqual([]);
  });

  it.each([
    [{ process: 'GTAW' }, 'process: GTAW, GMAW'],
    [{ type: 'plug' }, 'type: plug, fillet'],
    [{ filler: 'ER4043' }, 'filler: ER4043, ER5356'],
    [{ position: '4F' }, 'position: 4F, 2F'],
  ] as const)('does not cover %o', (given, told) => expect(judged(given)).toEqual([told]));

  it('does not cover another alloy, told once, nor a thinner or thicker part', () => {
    expect(judged({}, {}, 4, '5052-H32')).toEqual(['joins: base metal 5052-H32, 6061-T6']);
    expect(judged({}, {}, 2.9)).toEqual(['joins: thinner part 2.9 mm, 3 mm to 10 mm']);
    expect(judged({}, {}, 10.1)).toEqual(['joins: thinner part 10.1 mm, 3 mm to 10 mm']);
  });

  it('is not held to what it leaves empty, nor the weld to what is not on record', () => {
    const open = { types: [], base: [], filler: [], positions: [], thicknessMm: undefined };
    expect(judged({ type: 'plug', filler: 'ER4043', position: '4F' }, open, 99, '5052-H32')).toEqual([]);
    expect(judged({ filler: undefined, position: undefined })).toEqual([]);
    const unknown = uncovered(weld('W', [['X', 'Y']]), procedure, buildModel(), String);
    expect(unknown).toEqual([]);
  });
});

describe('a welder', () => {
  const paper: Qualification = {
    process: 'GMAW',
    positions: ['2F'],
    thicknessMm: [3, 10],
    groups: ['23'],
    from: '2025-09-01',
    until: '2027-09-01',
  };
  const judged = (given: Partial<Weld>, papers: readonly Partial<Qualification>[] = [{}], group: string | undefined = '23.1') => {
    const person: Person = { ...record('K7'), name: 'W', role: 'welder', qualified: papers.map((one) => ({ ...paper, ...one })) };
    const one = weld('W', [['A', 'B']], { welder: 'K7', date: '2026-02-11', position: '2F', ...given });
    return qualified(
      one,
      buildModel(
        { members },
        {
          people: new Map([['K7', person]]),
          sections: new Map([['RT50', tube(4)]]),
          materials: new Map([['6061-T6', { ...aluminium, group }]]),
        },
      ),
    );
  };
  const short = (...given: Parameters<typeof judged>) => judged(...given).reasons.map((one) => JSON.stringify(one));

  it.each([
    [{ welder: undefined }, 'no welder'],
    [{ welder: 'X1' }, 'unknown welder'],
    [{ date: undefined }, 'no date'],
  ] as const)('without evidence is not verified: %o', (given, what) => {
    expect(judged(given)).toEqual({ verdict: 'not verified', reasons: [{ what }] });
  });

  it('is qualified within all that the paper says, at its ends too, and at any hour of the day', () => {
    const good = { verdict: 'qualified', reasons: [] };
    expect(judged({})).toEqual(good);
    expect(judged({ date: '2025-09-01T06:00:00Z' })).toEqual(good);
    expect(judged({ date: '2027-09-01T23:00:00Z' })).toEqual(good);
    expect(judged({ position: 'PB', process: '131' })).toEqual(good);
    expect(judged({ position: undefined })).toEqual(good);
    expect(judged({ position: '4F' }, [{ positions: [] }])).toEqual(good);
    expect(judged({ date: '2040-01-01' }, [{ until: undefined }])).toEqual(good);
    expect(judged({}, [{ thicknessMm: undefined }])).toEqual(good);
    expect(judged({}, [{ groups: [] }])).toEqual(good);
    expect(judged({}, [{}], undefined)).toEqual(good);
  });

  it('falls short of each thing by itself, and of all together', () => {
    expect(judged({ process: 'GTAW' })).toEqual({ verdict: 'not qualified', reasons: [{ what: 'process', process: 'GTAW' }] });
    expect(judged({}, [{ process: undefined, method: 'VT' }]).reasons).toEqual([{ what: 'process', process: 'GMAW' }]);
    expect(short({ date: '2025-08-31' })).toEqual(['{"what":"before","date":"2025-08-31","limit":"2025-09-01"}']);
    expect(short({ date: '2027-09-02T01:00:00Z' })).toEqual(['{"what":"after","date":"2027-09-02","limit":"2027-09-01"}']);
    expect(short({ position: '4F' })).toEqual(['{"what":"position","position":"4F","listed":["2F"]}']);
    expect(short({}, [{ thicknessMm: [5, 10] }])).toEqual(['{"what":"thickness","thicknessMm":4,"range":[5,10]}']);
    expect(short({}, [{ groups: ['22'] }])).toEqual(['{"what":"group","group":"23","listed":["22"]}']);
    expect(judged({ position: '4F', date: '2020-01-01' }, [{ thicknessMm: [5, 9], groups: ['21'] }]).reasons.length).toBe(4);
  });

  // WLD-44: EN 287-2 (now ISO 9606-2), a welding textbook's Table 10.8
  it.each([
    ['21', ['21', '22', '23'], []],
    ['22', ['21', '22', '23'], []],
    ['23', ['23'], ['21', '22']],
  ] as const)('WLD-44: may weld group %s tested in %j, not in %j', (group, enough, lacking) => {
    for (const tested of enough) expect(judged({}, [{ groups: [`${tested}.2`] }], `${group}.1`).verdict).toBe('qualified');
    for (const tested of [...lacking, '24']) expect(judged({}, [{ groups: [tested] }], group).verdict).toBe('not qualified');
    expect(judged({}, [{ groups: ['24', enough[0]] }], group).verdict).toBe('qualified');
  });

  it('of several papers the one that lacks least is told, the first of two alike', () => {
    const reasons = judged({ position: '4F', date: '2028-01-01' }, [
      {},
      { positions: ['3F'], until: '2029-01-01' },
      { positions: ['4F'] },
    ]).reasons;
    expect(reasons).toEqual([{ what: 'position', position: '4F', listed: ['3F'] }]);
  });

  it('a range is met within a hundredth of a millimetre, so that inches meet it', () => {
    // SEC: 1/8 in is 3.175 mm
    expect([2.99, 3, 10, 10.01].map((mm) => inRange(mm, [3, 10]))).toEqual([true, true, true, true]);
    expect([2.98, 10.02].map((mm) => inRange(mm, [3, 10]))).toEqual([false, false]);
  });
});

describe('six months without the process', () => {
  const gaps = (welds: readonly Partial<Weld>[], papers: readonly Partial<Qualification>[] = []) => {
    const paper = { process: 'GMAW', positions: [], groups: [], from: '2025-01-01' };
    const person = (id: string): Person => ({
      ...record(id),
      name: id,
      role: 'welder',
      qualified: papers.map((one) => ({ ...paper, ...one })),
    });
    const model = buildModel(
      { members, welds: welds.map((one, i) => weld(`W${i}`, [['A', 'B']], { welder: 'K7', ...one })) },
      { people: new Map(['K7', 'M3'].map((id) => [id, person(id)])) },
    );
    return continuityGaps(model).map((one) => `${one.welder} ${one.process} ${one.weld.id} ${one.since}–${one.until}`);
  };

  it('WLD-57: is counted by welder and by process, from day to day', () => {
    const [first, late] = ['2026-01-01T08:00:00Z', '2026-07-02'];
    expect(gaps([{ date: first }, { date: '2026-07-01T23:00:00Z' }])).toEqual([]);
    expect(gaps([{ date: first }, { date: late }])).toEqual(['K7 GMAW W1 2026-01-01–2026-07-01']);
    // Somebody else’s work, another process, and a weld without a date bridge nothing.
    const nothing = [{ date: '2026-04-01', welder: 'M3' }, { date: '2026-04-01', process: 'GTAW' }, {}];
    expect(gaps([{ date: first }, ...nothing, { date: late }])).toEqual(['K7 GMAW W4 2026-01-01–2026-07-01']);
    expect(gaps([{ date: first }, { date: '2026-04-01', process: 'MIG' }, { date: late }])).toEqual([]);
  });

  it('begins with the paper of that process, on its very day', () => {
    const late = [{ date: '2026-07-02' }];
    expect(gaps(late)).toEqual([]);
    expect(gaps(late, [{ from: '2026-01-01' }])).toEqual(['K7 GMAW W0 2026-01-01–2026-07-01']);
    expect(gaps(late, [{ from: '2026-01-01' }, { from: '2026-07-02' }])).toEqual([]);
    expect(
      gaps(late, [
        { from: '2026-01-01', process: 'GTAW' },
        { from: '2026-01-01', process: undefined },
      ]),
    ).toEqual([]);
    expect(gaps(late, [{ from: '2026-07-03' }])).toEqual([]);
  });
});

describe('looks at a weld', () => {
  const look = (more: Partial<Inspection> = {}): Inspection => ({
    method: 'VT',
    by: 'J2',
    date: '2026-02-12',
    result: 'accept',
    ...more,
  });
  const W = (inspections: readonly Inspection[], more: Partial<Weld> = {}) =>
    weld('W', [['A', 'B']], { date: '2026-02-11', inspections, ...more });
  const order = (...given: Parameters<typeof W>) => outOfOrder(W(...given)).map(({ what, at }) => `${at} ${what}`);

  it('count by the last of each method, however it is typed', () => {
    expect(acceptedBy(W([look({ method: ' vt ' })]), 'VT')).toBe(true);
    expect(acceptedBy(W([look(), look({ result: 'reject' })]), 'VT')).toBe(false);
    expect(acceptedBy(W([look(), look({ method: 'PT', result: 'reject' })]), 'VT')).toBe(true);
    expect(acceptedBy(W([]), 'VT')).toBe(false);
  });

  it('are shares of the joints of a class that has any', () => {
    const model = buildModel({ members, welds: [W([look()])] }, {}, { inspection: { primary: {}, secondary: { PT: 0.1 } } });
    expect(inspectionShares(model).map(({ jointClass, method }) => `${jointClass} ${method}`)).toEqual(['primary VT']);
    expect(inspectionShares(buildModel())).toEqual([]);
  });

  it('are in order on the same day, at whatever hour is on record', () => {
    expect(order([look({ date: '2026-02-11' })], { date: '2026-02-11T15:00:00Z' })).toEqual([]);
    expect(order([look({ date: '2026-02-11T09:00:00Z' })])).toEqual([]);
    expect(order([look({ date: '2026-02-12T15:00:00Z' }), look({ date: '2026-02-12' })])).toEqual([]);
    expect(order([look({ date: '2026-02-12T15:00:00Z' }), look({ date: '2026-02-12T14:00:00Z' })])).toEqual([
      '1 before the look above',
    ]);
    expect(order([look({ date: '2000-01-01' })], { date: undefined })).toEqual([]);
    expect(order([look({ date: '2026-02-10T23:59:00Z' })])).toEqual(['0 before the weld']);
  });

  it('accept after a reject by the same method only with a repair', () => {
    const reject = look({ result: 'reject' });
    expect(order([reject, look()])).toEqual(['1 no repair number']);
    expect(order([reject, look({ repair: 1 })])).toEqual([]);
    expect(order([reject, look({ method: 'PT' })])).toEqual([]);
    expect(order([reject, reject])).toEqual([]);
    expect(order([look(), look()])).toEqual([]);
    expect(order([look({ method: 'PT', result: 'reject' }), look(), look({ method: 'pt' })])).toEqual(['2 no repair number']);
    expect(order([look(), reject])).toEqual([]);
  });

  it('make the repair rate of what was looked at, and none of what was not', () => {
    const rate = (welds: readonly Weld[]) => weldTotals(buildModel({ members, welds })).byProcess.GMAW;
    const one = rate([W([look({ result: 'reject' }), look({ repair: 1 })]), W([look(), look(), look()])]);
    expect(one).toMatchObject({ inspected: 2, rejected: 1, rejects: 1, repairs: 1, repairRate: 0.5 });
    expect(rate([W([])])).not.toHaveProperty('repairRate');
  });
});

describe('soft metal', () => {
  const joint = (more: Partial<Joint> = {}): Joint => ({
    members: ['A', 'B'],
    at: [100, 0, 0],
    gapMm: 0,
    welds: ['W-1'],
    bounds: { min: [90, -10, -10], max: [110, 10, 10] },
    ...more,
  });
  const boxes = (...joints: readonly Joint[]) =>
    heatAffectedMetal(joints).map(
      ({ id, box }) => `${id}: ${box.center.join(' ')}, ${box.half.map((mm) => mm.toFixed(3)).join(' ')}`,
    );

  it('MAT-44: is an inch each way about the contact: Aluminum Design Manual, from memory', () => {
    expect(boxes(joint())).toEqual(['W-1: 100 0 0, 35.400 35.400 35.400']);
  });

  it('is about a joint without a weld on record too, unless it is clamped and not welded', () => {
    expect(boxes(joint({ welds: [] }))).toEqual(['A and B: 100 0 0, 35.400 35.400 35.400']);
    expect(boxes(joint({ welds: [], clamps: [] })).length).toBe(1);
    expect(boxes(joint({ welds: [], clamps: ['UB-1'] }))).toEqual([]);
    expect(boxes(joint({ clamps: ['UB-1'] })).length).toBe(1);
    expect(boxes(joint({ bounds: undefined }))).toEqual([]);
  });

  it('of a member is measured along it, from its start, whatever is known of the contact', () => {
    const bands = (one: Joint, all = members) =>
      heatAffectedZones(buildModel({ members: all }), [one]).map(
        ({ member, bandsMm, share }) => `${member} ${bandsMm.map((band) => band.map((mm) => mm.toFixed(3)))} ${share.toFixed(6)}`,
      );
    expect(bands(joint({ bounds: undefined }))).toContain('A 74.600,125.400 0.101600');
    expect(bands(joint())).toContain('A 64.600,135.400 0.141600');
    const gusset = plateMember(
      'A',
      [
        [0, 0, 0],
        [1, 0, 0],
        [0, 1, 0],
      ],
      5,
    );
    expect(bands(joint(), [gusset])).toEqual([]);
    expect(bands(joint(), [lineMember('A', [5, 5, 5], [5, 5, 5])])).toEqual([]);
  });

  it('that just touches the next is one band', () => {
    const at = (x: number) => joint({ at: [x, 0, 0], bounds: undefined });
    const apart = 2 * 25.4;
    expect(heatAffectedZones(buildModel({ members }), [at(100), at(100 + apart)])[0]?.bandsMm.length).toBe(1);
    expect(heatAffectedZones(buildModel({ members }), [at(100), at(100.1 + apart)])[0]?.bandsMm.length).toBe(2);
  });
});
