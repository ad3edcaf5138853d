import { expect, it } from 'vitest';
import { uncommitted } from '../../../src/rules/record/uncommitted.js';
import { buildModel } from '../../support/build.js';
import { judgeOne } from '../judge-one.js';

it('record.uncommitted names the files, and is a note', () => {
  const [finding] = judgeOne(uncommitted, buildModel(), { uncommitted: ['a.yaml', 'b.yaml', 'c.yaml', 'd.yaml'] });
  expect(finding?.severity).toBe('note');
  expect(finding?.message).toContain('a.yaml, b.yaml, c.yaml and 1 more');
  expect(finding?.place.file).toBe('a.yaml');
});

it('record.uncommitted is silent where all is committed, and outside Git', () => {
  expect(judgeOne(uncommitted, buildModel(), { uncommitted: [] })).toEqual([]);
  expect(judgeOne(uncommitted, buildModel())).toEqual([]);
});
