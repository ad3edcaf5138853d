import { beforeAll, describe, expect, it } from 'vitest';
import { bookDocument } from '../../src/book/document.js';
import { EDITIONS, type Edition } from '../../src/book/input.js';
import { answered, QUESTIONS } from '../../src/book/questions.js';
import { FINGERPRINT, HISTORY, smallAssessment } from './small-store.js';

const anchors = {} as Record<Edition, ReadonlySet<string>>;

beforeAll(async () => {
  const assessment = smallAssessment();
  for (const edition of EDITIONS) {
    const input = { assessment, edition, fingerprint: FINGERPRINT, history: HISTORY, photoFile: async () => undefined };
    const { html } = await bookDocument(input);
    anchors[edition] = new Set([...html.matchAll(/ id="([^"]+)"/gu)].map(([, id]) => id as string));
  }
});

describe('the questions of the contents', () => {
  it.each(['service', 'shop'] as const)('all have an answer in the %s edition', (edition) => {
    expect(answered(anchors[edition]).map(({ ask }) => ask)).toEqual(QUESTIONS.map(({ ask }) => ask));
  });

  it('leave the owner those about wires out, and no more', () => {
    const asked = new Set(answered(anchors.owner).map(({ ask }) => ask));
    const left = QUESTIONS.map(({ ask }) => ask).filter((ask) => !asked.has(ask));
    expect(left).toEqual(['find.colour', 'find.leak', 'find.skin', 'find.tested', 'find.spare', 'find.earths', 'find.unused']);
  });

  it('name no place that no edition has', () => {
    const known = new Set(EDITIONS.flatMap((edition) => [...anchors[edition]]));
    const named = QUESTIONS.flatMap(({ first, besides = [] }) => [first, ...besides]).flatMap(({ to }) => to);
    // A chapter of a medium is there where the shell has it.
    expect(named.filter((to) => !known.has(to) && !to.startsWith('c-service-'))).toEqual([]);
  });
});
