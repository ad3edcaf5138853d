import { describe, expect, it } from 'vitest';
import { setInRecords } from './make/in-place.js';

const set = (text: string): string => setInRecords(text, 'digest', ({ id }) => (id === 'KEEP' ? undefined : `new-${String(id)}`));

describe('setInRecords', () => {
  it('replaces a value and leaves comments, order and spacing alone', () => {
    const text =
      '# head\n- {id: A, digest: old,\n   note: "x, y"}   # why\n\n- {id: KEEP, digest: old}\n- id: B\n  digest: old # kept\n';
    expect(set(text)).toBe(
      '# head\n- {id: A, digest: new-A,\n   note: "x, y"}   # why\n\n- {id: KEEP, digest: old}\n- id: B\n  digest: new-B # kept\n',
    );
  });

  it('puts a key that is missing at the end of its record', () => {
    expect(set('- {id: A}\n- id: B\n  note: two\n- {id: C, note: x}\n')).toBe(
      '- {id: A,\n   digest: new-A}\n- id: B\n  note: two\n  digest: new-B\n- {id: C, note: x,\n   digest: new-C}\n',
    );
  });

  it('leaves a file without records alone', () => {
    expect(set('# nothing yet\n')).toBe('# nothing yet\n');
  });
});
