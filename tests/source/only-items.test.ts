import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Node, parseDocument } from 'yaml';
import { onlyItems } from '../../src/source/parse.js';

/** Ways in which a shop types a record, each over lines of its own. */
const STYLES: readonly ((id: string) => string)[] = [
  (id) => `- {id: ${id}, part: rail}\n`,
  (id) => `- id: ${id}\n  part: rail\n`,
  (id) => `# before\n- {id: ${id},\n   part: "rail -\n   - left"}\n`,
  (id) => `-\n  id: ${id}\n  note: |\n    - one\n    - two\n`,
  (id) => `- {id: ${id}}\n\n  # within\n`,
  (id) => `- id: ${id}\n  of:\n  - a\n  - b\r\n`,
];

const read = (text: string): readonly { readonly id: string; readonly line: number }[] => {
  const document = parseDocument(text);
  expect(document.errors).toEqual([]);
  // Nothing but comments and blank lines is no list.
  const { items } = (document.contents ?? { items: [] }) as unknown as { readonly items: readonly Node[] };
  return items.map((item) => ({
    id: (item.toJS(document) as { readonly id: string }).id,
    line: text.slice(0, item.range?.[0] ?? 0).split('\n').length,
  }));
};

describe('onlyItems', () => {
  it('leaves the wanted items at their lines, as the parser reads them in the whole', () => {
    const typed = fc.array(fc.tuple(fc.constantFrom(...STYLES), fc.constantFrom('A', 'B', 'C')), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(typed, fc.constantFrom('A', 'B', 'Z'), (list, sought) => {
        const text = list.map(([style, id], i) => style(`${id}-${i}`)).join('');
        const few = onlyItems(text, (item) => item.includes(`${sought}-`));
        expect(few.split('\n').length).toBe(text.split('\n').length);
        const wanted = (all: ReturnType<typeof read>) => all.filter(({ id }) => id.startsWith(sought));
        expect(wanted(read(few))).toEqual(wanted(read(text)));
      }),
      { numRuns: 300 },
    );
  });

  it('reads no more than the wanted, and what stands before the first', () => {
    const text = Array.from({ length: 9 }, (_, i) => `- {id: A-${i}}\n`).join('');
    const few = (whole: string) => read(onlyItems(whole, (item) => item.includes('A-7')));
    expect(few(text)).toEqual([{ id: 'A-7', line: 8 }]);
    expect(few(`# heats of May\n${text}`)).toEqual([{ id: 'A-7', line: 9 }]);
    expect(parseDocument(onlyItems(`members:\n${text}`, (item) => item.includes('A-7'))).toJS()).toEqual({
      members: [{ id: 'A-7' }],
    });
  });

  it.each([
    ['lists under keys', 'tanks:\n- {id: A}\n- {id: B}\nseats:\n- {id: C}\n'],
    ['an anchor and its alias', '- {id: A}\n- &b {id: B}\n- *b\n'],
    ['two documents', '- {id: A}\n---\n- {id: B}\n'],
    ['a text over lines that starts at the margin', '- {id: A}\n- {id: B, note: "one\ntwo"}\n- {id: C}\n'],
    ['one record', 'shell: T-1\ntitle: Coach\n'],
  ])('leaves %s whole', (_what, text) => {
    expect(onlyItems(text, () => false)).toBe(text);
  });
});
