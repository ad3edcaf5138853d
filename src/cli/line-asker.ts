import { createInterface, type Interface } from 'node:readline';
import type { Asker, MenuChoice } from '../entry/asker.js';
import { nearest } from '../source/nearest.js';
import { UserError } from '../user-error.js';
import { printable } from './report/printable.js';

/** So many choices are shown at once. */
const AT_A_GLANCE = 9;
/** Turns of the event loop in which a waiting line comes in. */
const TURNS = 3;

/** A line that was typed, and whether it was there before its question. */
interface TypedLine {
  readonly text: string;
  readonly ahead: boolean;
}

type NamedChoice = MenuChoice & { readonly name: string };

/**
 * Asks line by line. A line that is typed while the program is still busy waits for its question, in order: however fast somebody types,
 * each answer goes where it was meant. Where an answer will not do, what was typed behind it is dropped, since it was meant for
 * questions that do not come now.
 */
export class LineAsker implements Asker {
  private readonly typed: string[] = [];
  private reader: Interface | undefined;
  private waiting: ((line: string | null) => void) | undefined;
  private ended = false;

  constructor(
    private readonly input: NodeJS.ReadableStream,
    private readonly output: NodeJS.WritableStream,
  ) {}

  async text({ text, usual, wrong, last }: Parameters<Asker['text']>[0]): Promise<string> {
    const hints = [usual === undefined ? '' : `Enter: ${usual}`, last === undefined ? '' : `=: ${last}, as last time`];
    const hint = hints.filter(Boolean).join('; ');
    for (;;) {
      const line = (await this.ask(`${text}${hint === '' ? '' : ` (${hint})`}`)).text.trim();
      const answer = line === '=' && last !== undefined ? last : line === '' && usual !== undefined ? usual : line;
      const fault = wrong?.(answer);
      if (fault === undefined) return answer;
      this.again(fault);
    }
  }

  async choose({ text, choices, usual }: Parameters<Asker['choose']>[0]): Promise<string> {
    const named = choices.map((one): NamedChoice => ({ ...one, name: one.name ?? one.value }));
    const first = named.filter(({ value }) => value === usual);
    const all = [...first, ...named.filter(({ value }) => value !== usual)];
    let shown: readonly NamedChoice[] = all.slice(0, AT_A_GLANCE);
    this.show(shown, all.length);
    const preset = usual === undefined ? '' : ` (Enter: ${(first[0]?.name ?? usual).replace(/^\((.*)\)$/u, '$1')})`;
    for (;;) {
      const line = (await this.ask(`${text}${preset}`)).text.trim();
      if (line === '' && usual !== undefined) return usual;
      if (line === '?') {
        shown = all;
        this.show(shown, all.length);
        continue;
      }
      const found = line === '' ? [] : matching(line, shown, all);
      const [only] = found;
      if (only && found.length === 1) {
        if (only.value.toLowerCase() !== line.toLowerCase()) this.say(`  → ${only.name}`);
        return only.value;
      }
      this.again(
        found.length > 1
          ? `Several have \`${line}\`:`
          : line === ''
            ? 'Type one of these, or its number.'
            : `None is called \`${line}\`.`,
      );
      shown = found.length > 1 ? found.slice(0, AT_A_GLANCE) : near(line, all);
      this.show(shown, found.length > 1 ? found.length : all.length);
    }
  }

  async confirm({ text, usual }: Parameters<Asker['confirm']>[0]): Promise<boolean> {
    await this.arrived();
    for (;;) {
      const { text: line, ahead } = await this.ask(`${text} (${usual ? 'Y/n' : 'y/N'})`);
      const word = line.trim().toLowerCase();
      if (word === 'y' || word === 'yes') return true;
      if (word === 'n' || word === 'no') return false;
      // An Enter too many, from before the question was there, agrees to nothing.
      if (word === '' && !ahead) return usual;
      this.again('Type y or n.');
    }
  }

  /** Lets in what was typed before now: a terminal hands over one line a turn. */
  private async arrived(): Promise<void> {
    this.open();
    for (let before = -1; before < this.typed.length; ) {
      before = this.typed.length;
      for (let turn = 0; turn < TURNS; turn++) await new Promise((resolve) => setImmediate(resolve));
    }
  }

  private async ask(question: string): Promise<TypedLine> {
    this.output.write(`${printable(question)}: `);
    const ahead = this.typed.shift();
    if (ahead !== undefined) {
      this.output.write(`${printable(ahead)}\n`);
      return { text: ahead, ahead: true };
    }
    const line = await this.next();
    if (line === null) throw new UserError('Given up: nothing was written.');
    return { text: line, ahead: false };
  }

  private next(): Promise<string | null> {
    this.open();
    if (this.ended) return Promise.resolve(null);
    const { input } = this;
    // Only while an answer is waited for may the terminal keep the process.
    const held = input as { ref?(): void; unref?(): void };
    held.ref?.();
    return new Promise((resolve) => {
      this.waiting = (line) => {
        held.unref?.();
        resolve(line);
      };
    });
  }

  private open(): void {
    if (this.reader) return;
    const reader = createInterface({ input: this.input, crlfDelay: Number.POSITIVE_INFINITY });
    this.reader = reader;
    reader.on('line', (line) => {
      const { waiting } = this;
      this.waiting = undefined;
      if (waiting) waiting(line);
      else this.typed.push(line);
    });
    reader.on('close', () => {
      this.ended = true;
      this.waiting?.(null);
      this.waiting = undefined;
    });
  }

  /** Lets the process end: no more is asked. */
  close(): void {
    this.reader?.close();
  }

  private again(why: string): void {
    const dropped = this.typed.splice(0).length;
    this.say(
      `  ${why}${dropped === 0 ? '' : `\n  What you typed ahead (${dropped} ${dropped === 1 ? 'line' : 'lines'}) is dropped.`}`,
    );
  }

  private show(choices: readonly NamedChoice[], all: number): void {
    const lines = choices.map(({ name }, i) => `  ${String(i + 1).padStart(2)}  ${name}`);
    const more = all > choices.length ? [`      and ${all - choices.length} more: type a part of its name, or ? for all`] : [];
    this.say([...lines, ...more].join('\n'));
  }

  private say(text: string): void {
    this.output.write(`${printable(text)}\n`);
  }
}

/** By its whole name; by its number in what is shown; by a part of its name. */
function matching(line: string, shown: readonly NamedChoice[], all: readonly NamedChoice[]): readonly NamedChoice[] {
  const word = line.toLowerCase();
  const whole = all.filter(({ value }) => value.toLowerCase() === word);
  if (whole.length > 0) return whole.slice(0, 1);
  const numbered = /^\d{1,4}$/u.test(line) ? shown[Number(line) - 1] : undefined;
  if (numbered) return [numbered];
  const starting = all.filter(({ value }) => value.toLowerCase().startsWith(word));
  return starting.length > 0 ? starting : all.filter(({ name }) => name.toLowerCase().includes(word));
}

function near(line: string, all: readonly NamedChoice[]): readonly NamedChoice[] {
  const close = nearest(
    line,
    all.map(({ value }) => value),
  );
  const found = all.filter(({ value }) => close.includes(value));
  return found.length > 0 ? found : all.slice(0, AT_A_GLANCE);
}
