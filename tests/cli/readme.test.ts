import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { COMMANDS } from '../../src/cli/commands/index.js';
import { runProgram } from '../../src/cli/program.js';
import { RULES } from '../../src/rules/index.js';
import { literalIo } from './literal-io.js';

const README = fileURLToPath(new URL('../../README.md', import.meta.url));

describe('the README', () => {
  it('is short, and what it names beside itself is there', () => {
    const text = readFileSync(README, 'utf8');
    expect(Buffer.byteLength(text)).toBeLessThan(15_000);
    for (const [, link = ''] of text.matchAll(/\]\((?!https?:)([^)#]+)\)/gu))
      expect(existsSync(new URL(`../../${link}`, import.meta.url)), link).toBe(true);
  });

  it('names every command, and no other', async () => {
    const io = literalIo();
    await runProgram(['--help'], io);
    const listed = [...io.answer().matchAll(/^ {2}([a-z][a-z-]+)(?: \[| <| {2})/gmu)].map((match) => match[1]);
    const told = [...readFileSync(README, 'utf8').matchAll(/^\| `([a-z-]+)(?: [^`]*)?` \|/gmu)].map((match) => match[1]);
    expect(new Set(told)).toEqual(new Set(listed.filter((name) => name !== 'help')));
    expect(told).toHaveLength(COMMANDS.length);
  });
});

describe('the rules', () => {
  it('have names of their own, in the area that lists them', () => {
    const names = RULES.map((rule) => rule.name);
    expect(new Set(names).size).toBe(names.length);
    for (const name of names) expect(name).toMatch(/^[a-z]+\.[a-z]+(-[a-z]+)*$/u);
  });

  it('say for the shop what they find, why, and on whose word', () => {
    for (const rule of RULES) for (const text of [rule.finds, rule.why, rule.source]) expect(text.length).toBeGreaterThan(5);
  });
});
