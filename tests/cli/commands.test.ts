import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runProgram } from '../../src/cli/program.js';
import { widthOf } from '../../src/cli/report/wrap.js';
import { literalIo } from './literal-io.js';
import { laySmallStore, type SmallStore } from './small-store.js';

let store: SmallStore;
beforeAll(async () => {
  store = await laySmallStore();
});
afterAll(() => store.remove());

async function shellbook(...args: readonly string[]) {
  const io = literalIo(store.root);
  const status = await runProgram(args, io);
  return { status, answer: io.answer(), messages: io.messages() };
}
async function answer(...args: readonly string[]) {
  const { status, answer: text, messages } = await shellbook(...args, '--json', '--quiet');
  expect(messages).toBe('');
  return { status, json: JSON.parse(text) };
}
const keys = (value: object): readonly string[] => Object.keys(value);

describe('check', () => {
  it('ends with 1 where a warning is open, and says where', async () => {
    const { status, answer: text, messages } = await shellbook('check', '--quiet');
    expect(status).toBe(1);
    expect(text).toContain('shells/T-1/services/dc.yaml:8:');
    expect(text).toContain('^^^');
    expect(messages).toBe('');
  });

  it('has the promised keys', async () => {
    const { status, json } = await answer('check', 'T-1');
    expect(status).toBe(1);
    expect(json).toMatchObject({
      shellbook: 1,
      command: 'check',
      shell: 'T-1',
      revision: expect.stringMatching(/^[0-9a-f]{40}$/u),
    });
    expect(keys(json)).toEqual(expect.arrayContaining(['findings', 'counts', 'openings', 'access', 'joints']));
    expect(keys(json.findings[0])).toEqual(['rule', 'severity', 'message', 'ids', 'file', 'line', 'column']);
    expect(keys(json.counts)).toEqual(['error', 'warning', 'note', 'decided']);
    expect(keys(json.access)).toEqual(['nodes', 'nodes_in_reach', 'run_length_mm', 'run_length_in_reach_mm']);
    expect(keys(json.joints)).toEqual(['found', 'recorded', 'missing', 'without_joint']);
  });

  it('ends with 0 once the warnings are decided by name, and shows by whom', async () => {
    const decided = await laySmallStore({
      'shells/T-1/findings.yaml':
        '- {id: NC-1, raised: 2026-04-11, of: [DC-1/1, DC-1/2, DC-1/S1], rules: [order.not-verified], description: no photos taken, decision: use as is, reason: seen through AP-1, approved_by: K. Marrow, closed: 2026-04-12}\n',
    });
    try {
      const io = literalIo(decided.root);
      expect(await runProgram(['check', 'T-1', '--json'], io)).toBe(0);
      const json = JSON.parse(io.answer());
      expect(json.counts).toMatchObject({ error: 0, warning: 3, decided: 3 });
      const warnings = json.findings.filter((one: { severity: string }) => one.severity === 'warning');
      expect(warnings.map((one: { decided_by?: string }) => one.decided_by)).toEqual(['NC-1', 'NC-1', 'NC-1']);
    } finally {
      decided.remove();
    }
  });

  it('tells what is not committed, as a note', async () => {
    const own = await laySmallStore();
    try {
      own.write('shells/T-1/amendments.yaml', '# nothing yet\n');
      const io = literalIo(own.root);
      await runProgram(['check', '--json'], io);
      const notes = JSON.parse(io.answer()).findings.filter((one: { rule: string }) => one.rule === 'record.uncommitted');
      expect(notes).toMatchObject([{ severity: 'note', file: 'shells/T-1/amendments.yaml' }]);
    } finally {
      own.remove();
    }
  });

  it('reads bad input to the end, blames the line, and gives no stack', async () => {
    const bad = await laySmallStore({
      'shells/T-1/members.yaml': '- {id: FL-1, part: rail\n- 5\n',
      'shells/T-1/tests.yaml': '\u0000\u0001',
    });
    try {
      const io = literalIo(bad.root);
      expect(await runProgram(['check', 'T-1'], io)).toBe(1);
      expect(io.answer()).toContain('shells/T-1/members.yaml:');
      expect(io.answer() + io.messages()).not.toMatch(/\n\s+at .*\.[tj]s:/u);
    } finally {
      bad.remove();
    }
  });
});

describe('weights', () => {
  it('has the promised keys, in SI', async () => {
    const { status, json } = await answer('weights', 'T-1');
    expect(status).toBe(0);
    expect(keys(json)).toEqual(
      expect.arrayContaining(['ratings', 'conditions', 'tickets', 'uvw_kg', 'occc_kg', 'ccc_kg', 'full_water_kg', 'bays']),
    );
    expect(keys(json.ratings[0])).toEqual([
      'axle',
      'gawr_kg',
      'tyres_kg',
      'wheels_kg',
      'suspension_kg',
      'limit_kg',
      'limited_by',
    ]);
    expect(json.conditions.map((one: { name: string }) => one.name)).toEqual(
      expect.arrayContaining(['unladen', 'occupants', 'water', 'loaded', 'waste']),
    );
    expect(keys(json.conditions[0].axles[0])).toEqual(
      expect.arrayContaining(['axle', 'load_kg', 'limit_kg', 'margin_kg', 'uncertainty_kg', 'verdict']),
    );
    expect(keys(json.tickets[0])).toEqual(expect.arrayContaining(['id', 'as_weighed', 'normalised', 'predicted', 'residual']));
    // FLU-01: 6,000 lb × 0.45359237 kg
    expect(json.ratings[0]).toMatchObject({ axle: 'front', gawr_kg: 2721.55422, limited_by: 'gawr' });
    expect(json.bays[0]).toMatchObject({ id: 'B1', limited_by: expect.any(String) });
  });

  it('ends with 1 over a rating', async () => {
    const over = await laySmallStore({
      'shells/T-1/components.yaml':
        '- {id: CMP-1, name: ballast, mass: 9000 lb, at: [10 in, 0 in, 20 in], basis: weighed, date: 2026-08-01}\n',
      'shells/T-1/weights.yaml': '# not weighed yet\n',
    });
    try {
      const io = literalIo(over.root);
      expect(await runProgram(['weights', 'T-1'], io)).toBe(1);
      expect(io.answer()).toContain('over');
    } finally {
      over.remove();
    }
  });
});

describe('takeoff', () => {
  it('has the promised keys', async () => {
    const { json } = await answer('takeoff', 'T-1');
    expect(keys(json)).toEqual(expect.arrayContaining(['members', 'panels', 'sections', 'total', 'by_stage', 'by_alloy']));
    expect(json.members.map((one: { id: string }) => one.id)).toEqual(['FL-1', 'FL-2']);
    expect(keys(json.sections[0])).toEqual(expect.arrayContaining(['id', 'area_mm2', 'ix_mm4', 'iy_mm4', 'kg_per_m']));
    // SEC-K2: RT 2 x 2 x 0.125 in 6061 at 2700 kg/m³ is 1.6331 kg/m; 160 in of it 6.637 kg
    expect(json.sections[0].kg_per_m).toBeCloseTo(1.6331, 3);
    expect(json.members[1].length_mm).toBeCloseTo(4064, 6);
    expect(json.members[1].mass_kg).toBeCloseTo(1.6331 * 4.064, 3);
    expect(json.total.mass_kg).toBeGreaterThan(0);
    expect(json.total.centroid_mm).toHaveLength(3);
  });
});

describe('where', () => {
  it('has the promised keys, and says how to get to a splice', async () => {
    const { status, json } = await answer('where', 'T-1', 'DC-1/S1');
    expect(status).toBe(0);
    const [match] = json.matches;
    expect(keys(match)).toEqual(
      expect.arrayContaining([
        'id',
        'kind',
        'name',
        'service',
        'position_mm',
        'panels',
        'protection',
        'path_mm',
        'length_mm',
        'pages',
      ]),
    );
    expect(match).toMatchObject({ id: 'DC-1/S1', kind: 'node', position_mm: [2540, 0, 0], pages: [] });
    expect(match.panels[0]).toMatchObject({ id: 'AP-1', distance_mm: expect.any(Number), reach: 'hand', blocked_by: [] });
    expect(match.protection).toMatchObject({ kind: 'fuse', rating_a: 10, at: 'DCP' });
  });

  it('gives a circuit its figures', async () => {
    const { json } = await answer('where', 'T-1', 'DC-1');
    expect(keys(json.matches[0].circuit)).toEqual([
      'length_mm',
      'drop_v',
      'drop_percent',
      'ampacity_a',
      'protection_a',
      'worst_load',
    ]);
    expect(json.matches[0].circuit.worst_load).toBe('DC-1/L');
  });

  it('says nothing of reach where nobody has worked it out', async () => {
    expect((await shellbook('where', 'T-1', 'DC-1/S1')).answer).toMatch(/\breach +AP-1/u);
    expect((await shellbook('where', 'T-1', 'B1')).answer).not.toContain('reach');
  });

  it('ends with 1 and an empty answer where nothing is called that', async () => {
    expect(await answer('where', 'T-1', 'turbine', '--quiet')).toMatchObject({ status: 1, json: { matches: [] } });
    expect((await shellbook('where', 'T-1', 'turbine')).messages).toContain('`turbine`');
  });
});

describe('behind, near and isolate', () => {
  it('say what is in reach through a panel', async () => {
    const { status, json } = await answer('behind', 'T-1', 'AP-1');
    expect(status).toBe(0);
    expect(json.panel).toBe('AP-1');
    expect(keys(json.contents[0])).toEqual(expect.arrayContaining(['id', 'kind', 'distance_mm', 'reach']));
    expect(json.contents.map((one: { id: string }) => one.id)).toContain('DC-1/S1');
    const distances = json.contents.map((one: { distance_mm: number }) => one.distance_mm);
    expect(distances).toEqual([...distances].sort((a: number, b: number) => a - b));
  });

  it('say what a drill would meet', async () => {
    const { json } = await answer('near', 'T-1', '100in,0,0', '--within', '1in');
    expect(json.within_mm).toBeCloseTo(25.4, 9);
    expect(keys(json.hits[0])).toEqual(expect.arrayContaining(['id', 'kind', 'distance_mm', 'nearest_mm']));
    expect(json.hits.map((one: { id: string }) => one.id)).toEqual(expect.arrayContaining(['DC-1/1', 'DC-1/S1']));
    expect((await answer('near', 'T-1', '-10in,-2ft,0')).json.place_mm).toEqual([-254, -609.6, 0]);
    // one unit for all three
    expect((await answer('near', 'T-1', '-10,20,0in')).json.place_mm).toEqual([-254, 508, 0]);
    expect((await answer('near', 'T-1', '100,-5.5,0mm')).json.place_mm).toEqual([100, -5.5, 0]);
  });

  it('say how long a screw the face takes that the place is on, or that there is none', async () => {
    const { json } = await answer('near', 'T-1', '100,0,-4in');
    expect(keys(json)).toContain('screw');
    expect(keys(json.screw)).toEqual(['panel', 'at_mm', 'depth_mm', 'limited_by', 'limited_by_kind', 'metal']);
    expect(json.screw.panel).toBe('BP-1');
    expect(json.screw.depth_mm).toBeLessThan(150);
    const { answer: text } = await shellbook('near', 'T-1', '100,0,-4in');
    expect(text).toMatch(/Deepest screw into BP-1 at .*under its head/su);
    const off = await answer('near', 'T-1', '100,0,0in');
    expect(off.json).toMatchObject({ face: null });
    expect((await shellbook('near', 'T-1', '100,0,0in')).answer).toContain('No face is recorded within 1 in');
  });

  it('say what to do first, and that no source is left', async () => {
    const { status, json } = await answer('isolate', 'T-1', 'DC-1/2');
    expect(status).toBe(0);
    expect(keys(json)).toEqual(expect.arrayContaining(['actions', 'sources', 'sources_left']));
    expect(json).toMatchObject({ sources: ['BAT'], sources_left: [] });
    expect(keys(json.actions[0])).toEqual(expect.arrayContaining(['id', 'kind', 'action', 'panels']));
  });

  it.each([
    [['behind', 'T-1', 'BP-1'], 'no access panel'],
    [['near', 'T-1', '100,0,0'], 'bare number `100`'],
    [['near', 'T-1', '100in,0'], 'expected x,y,z'],
    [['near', 'T-1', '100in,0,0', '--within', '3 kg'], 'mass `3 kg`'],
    [['isolate', 'T-1', 'DC-9'], 'Nothing in T-1 is called DC-9'],
  ])('%j ends with 2', async (args, said) => {
    const { status, answer: text, messages } = await shellbook(...args, '--quiet');
    expect(status).toBe(2);
    expect(text).toBe('');
    expect(messages).toContain(said);
  });
});

describe('list and history', () => {
  it('list every shell with its state', async () => {
    const { json } = await answer('list');
    expect(json.shells).toMatchObject([
      { shell: 'T-1', title: 'Small test shell', state: 'in build', stage: 'floor', counts: { warning: 3 } },
    ]);
  });

  it('tell who recorded what', async () => {
    const { json } = await answer('history', 'T-1');
    expect(json.commits).toMatchObject([{ author: 'K. Marrow', subject: 'Record the small shell', tags: [] }]);
    expect(json.revision).toBe(json.commits[0].commit);
  });
});

describe('what could not be done', () => {
  it.each([
    [['weights', 'T-2'], 'Did you mean T-1?'],
    [['weights', 'QX-700'], 'It has T-1.'],
    [['wieghts', 'T-1'], 'Did you mean weights?'],
    [['check', '--al'], '--all'],
    [['weights'], "Missing required argument 'shell'"],
    [['check', '--store', 'nowhere'], 'No store at nowhere'],
    [['history', 'T-1', '--jsn'], '--json'],
  ])('%j ends with 2 and one message', async (args, said) => {
    const { status, answer: text, messages } = await shellbook(...args);
    expect(status).toBe(2);
    expect(text).toBe('');
    expect(messages).toContain(said);
    expect(messages.trim().split('\n').length).toBeLessThanOrEqual(3);
  });
});

describe('the shape of answers', () => {
  it.each([
    ['check', 'T-1'],
    ['weights', 'T-1', '--all'],
    ['takeoff', 'T-1', '--each'],
    ['list'],
    ['history', 'T-1'],
    ['--help'],
    ['check', '--help'],
  ])('%s %s fits 80 columns and has no colours off a terminal', async (...args) => {
    const { answer: text } = await shellbook(...args.filter((one) => one !== undefined));
    expect(text.split('\n').filter((line) => widthOf(line) > 80)).toEqual([]);
    expect(text).not.toContain('\u001b');
  });

  it('is coloured on a terminal, unless told otherwise in any of three ways', async () => {
    const coloured = async (args: readonly string[], env = {}) => {
      const io = literalIo(store.root, env, true);
      await runProgram(['check', ...args], io);
      return io.answer().includes('\u001b[');
    };
    expect(await coloured([])).toBe(true);
    expect(await coloured(['--no-color'])).toBe(false);
    expect(await coloured([], { NO_COLOR: '1' })).toBe(false);
    expect(await coloured([], { TERM: 'dumb' })).toBe(false);
  });

  it('takes shared options before and after the command', async () => {
    const before = await shellbook('--json', '--quiet', 'list');
    const after = await shellbook('list', '--json', '--quiet');
    expect(before).toEqual(after);
  });

  it('gives help with an example for every command', async () => {
    const help = (await shellbook('--help')).answer;
    const names = [...help.matchAll(/^ {2}([a-z][a-z-]+)(?: \[| <| {2})/gmu)].map((match) => match[1] as string);
    expect(names.length).toBeGreaterThan(5);
    for (const name of names.filter((one) => one !== 'help')) {
      const { status, answer: text } = await shellbook(name, '--help');
      expect(status, name).toBe(0);
      expect(text, name).toContain(`shellbook ${name}`);
      expect(text, name).toMatch(/Examples?:/u);
    }
  });
});
