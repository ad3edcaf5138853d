import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { simpleGit } from 'simple-git';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { runProgram } from '../../src/cli/program.js';
import { TOPICS, topicsOf } from '../../src/query/topics/index.js';
import { DEMO, judged } from '../demo/store.js';
import { literalIo } from './literal-io.js';

/** What a technician asks of a finished coach, the command that answers it, and what the answer must hold. */
interface Question {
  readonly asks: string;
  readonly command: readonly string[];
  readonly holds: readonly (string | RegExp)[];
  /** 1 where the answer is "no". */
  readonly status?: number;
}

const SHELL = 'OV-021';

const QUESTIONS: readonly Question[] = [
  {
    asks: '1 where does this wire go, by its tag',
    command: ['where', SHELL, 'DC-30'],
    holds: [/ends +DC-30\/F, DC-30\/L1, DC-30\/L2/u, /joints +DC-30\/S1/u, /follow +open AP-01, .*AP-06/u],
  },
  {
    asks: '1 where does this wire go, by colour and place',
    command: ['where', SHELL, 'red/black', 'rear', 'left'],
    holds: ['DC-30/1', /ends +DC-30\/S1, DC-30\/L1/u, /colour +red\/black/u],
  },
  {
    asks: '1 the same with a slip, without its hyphen',
    command: ['where', SHELL, 'dc30'],
    holds: [/^DC-30 +circuit bindery/mu],
  },
  {
    asks: '2 which panel do I open, with what, what seal to renew',
    command: ['where', SHELL, 'AP-06'],
    holds: [
      /opens +8 screws/u,
      /tool +3\/16 hex/u,
      /torque +.*N·m/u,
      /seal +renew: EPDM tape/u,
      /order +one corner last\b[\s\S]*support it before\s+the last fastener/u,
    ],
  },
  { asks: '2 which panel do I open for it', command: ['where', SHELL, 'DC-30/S1'], holds: [/reach +AP-06 by hand/u] },
  {
    asks: '3 what fuse feeds it, where, behind which main',
    command: ['where', SHELL, 'DC-30'],
    holds: [/protected fuse 10 A at DC-30\/F, exposed/u, /fed through fuse 200 A at BAT\/MF/u],
  },
  {
    asks: '4 what is live if I kill the main',
    command: ['where', SHELL, 'what is live if I kill the main?'],
    holds: [/SHORE\/B +with only this off, ACP is still live; fed by GEN/u, /DCP .*\n? *.*BAT\/MD/u, 'live sources left'],
  },
  {
    asks: '4 the full list for the panel, with the proof',
    command: ['isolate', SHELL, 'DCP'],
    holds: ['Switch BAT/MD off', 'Sources that feed it: SHORE, GEN', 'no recorded source reaches it', 'never dead'],
  },
  {
    asks: '5 where are all fuses, in-line ones too',
    command: ['where', SHELL, 'all fuses'],
    holds: [
      'SHORE/B',
      'GEN/B',
      /BAT\/MF +fuse, main fuse, class T/u,
      /SOL\/BR/u,
      /CONV\/F +fuse, charger fuse; rating 60 A/u,
      'DC-32/F',
      'exposed',
    ],
  },
  {
    asks: '6 where is the valve, shut-off, drain',
    command: ['where', SHELL, 'valves'],
    holds: [/LP\/V +tank valve/u, /CW-D1 .*\n?.*normally *\n? *closed|CW-D1/u, /stands normally/u, 'AP-08 hand'],
  },
  {
    asks: '7 how do I drain it for frost',
    command: ['where', SHELL, 'how do I drain it for frost'],
    holds: [
      /1\. switch off: water heater/u,
      /2\. switch off: water pump/u,
      /shut: tank shut-off/u,
      /CW-D1 .*AP-08 hand/u,
      /comes out/u,
      'holds water',
    ],
  },
  {
    asks: '8 where can I drill, how deep',
    command: ['near', SHELL, '192in,-30in,95in', '--within', '4in'],
    holds: ['DC-S/1', '±', /known/u],
  },
  { asks: '9 what is behind this panel', command: ['behind', SHELL, 'AP-06', '--all'], holds: ['DC-30/S1', 'ES-6', 'hand'] },
  {
    asks: '10 where may I jack, lift, tie down, tow',
    command: ['where', SHELL, 'where may I lift or jack'],
    holds: [/LIFT-1 .*lift/u, /rating 36 kN/u, 'declared by', /jack: not declared/u],
  },
  {
    asks: '11 what may I hang here',
    command: ['where', SHELL, 'hang'],
    holds: [/MOUNT-1/u, /rating 24 kN/u, 'declared by'],
  },
  {
    asks: '12 can I walk on the roof',
    command: ['where', SHELL, 'can I walk on the roof'],
    holds: [/ROOF-1/u, /rating\s+2\.5 kN/u, /T01-TC +truss top chord; station/u, /CMP-14 +solar panels/u],
  },
  {
    asks: '13 what alloy and filler is this, may I weld here',
    command: ['where', SHELL, 'CB-05'],
    holds: [/alloy +6061-T6/u, /filler +ER5356/u, /procedure +WPS-/u, /before welding batteries/u, 'adhesive'],
  },
  {
    asks: '14 what is the torque',
    command: ['where', SHELL, 'torque'],
    holds: [/UB-01 +U-bolt/u, /BAT\/MF .*torque/u, /AP-06 .*torque/u, 'check', 'N·m'],
  },
  {
    asks: '15 what was it tested to',
    command: ['where', SHELL, 'GA'],
    holds: [/tested +TS-004 drop: 3\.00 psi to 3\.00 psi, limit 0 psi, passed/u],
  },
  { asks: '15 all tests', command: ['where', SHELL, 'tested'], holds: ['TS-004', 'verdict passed', 'limit'] },
  { asks: '16 what do I owe each axle', command: ['weights', SHELL], holds: ['steer', 'drive', 'tag', /psi|margin/u] },
  {
    asks: '17 has this been repaired before',
    command: ['where', SHELL, 'repaired before'],
    holds: [/NC-06/u, /decision\s+rework/u, /of\s+CW/u],
  },
  { asks: '17 the same of one line', command: ['where', SHELL, 'CW'], holds: [/findings +NC-06 rework/u] },
  {
    asks: '18 where will a leak show',
    command: ['where', SHELL, 'where will a leak show'],
    holds: [/DR-T1 +clean-out 1; in LL-1; closed by BP-L-1/u, /drain hole/u, 'AP-09 hand'],
  },
  {
    asks: '19 is there a spare way, a pull cord',
    command: ['where', SHELL, 'RC-L'],
    holds: [/filled +\d+ %/u, /free +\d+ %/u, /spare +one 1 in loom tube/u, /pull cord +yes/u, /cord ends +AP-21, AP-28/u],
  },
  { asks: '19 in any cavity', command: ['where', SHELL, 'spare'], holds: [/CD-1 +spare conduit 1/u, /cord ends AP-01, AP-07/u] },
  {
    asks: '20 where are earths and bonding studs',
    command: ['where', SHELL, 'earths'],
    holds: [/ES-6 +ground stud 6/u, 'stainless washer', 'AP-06 forearm', 'torque'],
  },
  {
    asks: '21 which wires are abandoned or spare',
    command: ['where', SHELL, 'which wires are abandoned or spare'],
    holds: [/DC-SP\/1 +spare; from DC-SP\/A; to DC-SP\/B/u, /DC-X1\/1 +abandoned/u, 'marking X1'],
  },
  {
    asks: '22 what changed since the book',
    command: ['where', SHELL, 'what changed since the book?'],
    holds: [/changes /u, 'date 2026-', `shellbook history ${SHELL}`],
  },
  {
    asks: '23 in an emergency',
    command: ['where', SHELL, 'emergency'],
    holds: [/LP\/V +tank valve; shuts LP/u, /BAT\/MF .*shuts BAT/u, /BAT +house battery/u, 'do not cut here'],
  },
  {
    asks: '24 whom do I call',
    command: ['where', SHELL, 'whom do I call'],
    holds: ['The shell: Ondervale Coachcraft', 'contact', 'The chassis:', 'last sign-off'],
  },
  {
    asks: '25 is this the right book',
    command: ['where', SHELL, 'is this the right book'],
    holds: ['shell OV-021', 'vin', '1Z9FBV5T', 'shellbook verify'],
  },
];

/** A repository of its own: no book that was printed elsewhere lends its page numbers, and the first question answers for the others. */
let store: string;
beforeAll(async () => {
  store = mkdtempSync(path.join(tmpdir(), 'shellbook-questions-'));
  cpSync(DEMO, store, { recursive: true });
  const git = simpleGit({ baseDir: store });
  await git.init();
  await git.addConfig('user.name', 'K. Marrow').addConfig('user.email', 'k@example.org');
  await git.add('.').commit('The record as it stands');
  // An hour later, when no file is young any more, however long the test takes.
  vi.useFakeTimers({ toFake: ['Date'], now: Date.now() + 3_600_000 });
});
afterAll(() => {
  vi.useRealTimers();
  rmSync(store, { recursive: true, force: true });
});

describe('a technician’s questions, at the prompt', () => {
  it.each(QUESTIONS.map((question) => [question.asks, question] as const))('%s', async (_, { command, holds, status = 0 }) => {
    const io = literalIo(store);
    const ended = await runProgram([...command, '--quiet'], io);
    const said = io.answer();
    for (const one of holds) {
      if (typeof one === 'string') expect(said.replaceAll(/\s+/gu, ' ')).toContain(one);
      else expect(said).toMatch(one);
    }
    expect(io.messages()).toBe('');
    expect(ended).toBe(status);
  });

  it('are named in the help, each by one word', async () => {
    const io = literalIo(store);
    await runProgram(['where', '--help'], io);
    const said = io.answer().replaceAll(/\s+/gu, ' ');
    const listed = /Questions it knows: (.*)\./u.exec(said)?.[1]?.split(', ');
    expect(listed).toEqual(TOPICS.map((topic) => topic.name));
    for (const name of listed ?? []) expect(topicsOf(name).map((topic) => topic.name)).toContain(name);
  });

  it('asks all 25', () => {
    const asked = new Set(QUESTIONS.map(({ asks }) => Number.parseInt(asks, 10)));
    expect([...asked].sort((a, b) => a - b)).toEqual(Array.from({ length: 25 }, (_, i) => i + 1));
  });
});

describe('where, on the finished shell', () => {
  let records: ReturnType<typeof judged>['assessment']['model']['shell'];
  beforeAll(() => {
    records = judged(SHELL).assessment.model.shell;
  });

  it('lists every fuse and breaker that is on record', async () => {
    const io = literalIo(store);
    await runProgram(['where', SHELL, 'fuses', '--json', '--quiet'], io);
    const answer = JSON.parse(io.answer()) as { topics: { rows: { id: string | null }[] }[]; matches: { id: string }[] };
    const listed = new Set(answer.topics[0]?.rows.map((row) => row.id));
    const held = records.circuits.flatMap((circuit) => circuit.protection?.at ?? []);
    expect(held.filter((id) => !listed.has(id))).toEqual([]);
    expect(answer.matches.map((match) => match.id)).toEqual(expect.arrayContaining([...new Set(held)]));
  });
});
