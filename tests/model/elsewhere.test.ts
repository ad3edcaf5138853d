import { describe, expect, it } from 'vitest';
import { continuityGaps } from '../../src/compute/welding/continuity.js';
import { loadStore } from '../../src/model/load.js';
import { storeText } from '../support/store.js';

const weldLine = (id: string, date: string, welder = 'K7', process = 'GMAW'): string =>
  `- {id: ${id}, joins: [A, B], type: fillet, size: 6 mm, length: 50 mm, process: ${process}, welder: ${welder}, date: ${date}}\n`;

function gapsOf(shell: string, files: Readonly<Record<string, string>>) {
  const shells = ['T-1', 'T-2', 'T-3'].map((id) => [`shells/${id}/shell.yaml`, `shell: ${id}\ntitle: Test\n`] as const);
  const store = loadStore(
    storeText({
      'shop.yaml': 'shop: {name: Test}\n',
      'library/people.yaml':
        '- {id: K7, name: A, role: welder, qualified: [{process: GMAW, positions: [2F], from: 2025-01-10}]}\n- {id: M3, name: B, role: welder}\n',
      ...Object.fromEntries(shells),
      ...files,
    }),
  );
  const loaded = store.shells.get(shell);
  if (!loaded) throw new Error(shell);
  return continuityGaps(loaded.model).map(({ weld, since, sinceElsewhere }) => [weld.id, since, sinceElsewhere]);
}

describe('welder continuity over every shell of the store', () => {
  const late = { 'shells/T-1/welds.yaml': weldLine('W-1', '2026-03-01') };

  it('a gap in one shell is bridged by work on another', () => {
    expect(gapsOf('T-1', late)).toEqual([['W-1', '2025-01-10', undefined]]);
    expect(gapsOf('T-1', { ...late, 'shells/T-2/welds-floor.yaml': weldLine('W-9', '2025-11-20') })).toEqual([]);
  });

  it('WLD-57 holds across shells: 1 September holds to 1 March, and the gap says where it was last used', () => {
    expect(gapsOf('T-1', { ...late, 'shells/T-2/welds.yaml': weldLine('W-9', '2025-09-01') })).toEqual([]);
    expect(gapsOf('T-1', { ...late, 'shells/T-3/welds.yaml': weldLine('W-9', '2025-08-31') })).toEqual([
      ['W-1', '2025-08-31', 'T-3 W-9'],
    ]);
  });

  it('takes only the same welder and the same process, by any name of it', () => {
    expect(gapsOf('T-1', { ...late, 'shells/T-2/welds.yaml': weldLine('W-9', '2025-11-20', 'M3') }).length).toBe(1);
    expect(gapsOf('T-1', { ...late, 'shells/T-2/welds.yaml': weldLine('W-9', '2025-11-20', 'K7', 'GTAW') }).length).toBe(1);
    expect(gapsOf('T-1', { ...late, 'shells/T-2/welds.yaml': weldLine('W-9', '2025-11-20', 'K7', '131') })).toEqual([]);
  });

  it('is not led astray by later work, nor by a file of another shell that is broken', () => {
    expect(gapsOf('T-1', { ...late, 'shells/T-2/welds.yaml': weldLine('W-9', '2026-03-02') }).length).toBe(1);
    expect(gapsOf('T-1', { ...late, 'shells/T-2/welds.yaml': '- {id: K7' }).length).toBe(1);
  });
});
