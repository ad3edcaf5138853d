import { beforeAll, describe, expect, it } from 'vitest';
import { bookDocument } from '../../src/book/document.js';
import { forEdition } from '../../src/book/editions.js';
import { EDITIONS, type Edition } from '../../src/book/input.js';
import { coverageOf, digestOf } from '../../src/closeout/coverage.js';
import { FINGERPRINT, HISTORY, smallAssessment } from './small-store.js';

const WELDER = 'Orla Vantongeren';
const CUSTOMER = ['Ysolde Brackwater', 'Lower Fennimarsh', 'ysolde@example.test'];

const pages = {} as Record<Edition, string>;
/** Text as a reader sees it, attributes included; fonts and styles left out. */
const read = (html: string): string => html.slice(html.indexOf('<body>'));

beforeAll(async () => {
  for (const edition of EDITIONS) {
    const input = {
      assessment: smallAssessment(),
      edition,
      fingerprint: FINGERPRINT,
      history: HISTORY,
      photoFile: async () => undefined,
    };
    pages[edition] = read((await bookDocument(input)).html);
  }
});

describe('editions', () => {
  it('tells the shop everything', () => {
    for (const word of [WELDER, ...CUSTOMER.slice(0, 2), 'Nick in the flange']) expect(pages.shop).toContain(word);
  });

  it.each(['owner', 'service'] as const)('keeps welders’ names and stamps out of the %s edition', (edition) => {
    expect(pages[edition]).not.toContain(WELDER);
    expect(pages[edition]).not.toMatch(/\bK7\b/u);
  });

  it('keeps the customer out of the service edition, in notes, amendments and commits too', () => {
    for (const word of CUSTOMER) expect(pages.service).not.toContain(word);
    expect(pages.service).toContain('Bay light moved for the owner');
  });

  it('tells the owner who it was built for, and only the findings meant for the owner', () => {
    expect(pages.owner).toContain('Ysolde Brackwater');
    expect(pages.owner).toContain('Dent of 2 mm');
    expect(pages.owner).not.toContain('Nick in the flange');
    expect(pages.owner).not.toMatch(/weld\.[a-z-]+/u);
  });

  it('leaves nothing as typed where something is hidden', () => {
    const { model } = forEdition(smallAssessment(), 'owner');
    expect(model.shell.welds[0]?.typed).toEqual({});
    expect(model.shell.welds[0]).not.toHaveProperty('welder');
    expect(model.shell.byId.get('W-1')?.record).toBe(model.shell.welds[0]);
  });

  it.each(EDITIONS)(
    'says in the %s edition too that a sign-off holds, though it covers what the edition hides',
    async (edition) => {
      const given = smallAssessment();
      const { shell } = given.model;
      const [first, ...rest] = shell.signoffs;
      if (!first) throw new Error('the small store has a sign-off');
      const digest = digestOf(coverageOf(given.model, first.stage, first.date.slice(0, 10)));
      const signed = { ...given.model, shell: { ...shell, signoffs: [{ ...first, digest }, ...rest] } };
      const hiding = forEdition({ ...given, model: signed }, edition);
      if (edition !== 'shop') expect(digestOf(coverageOf(hiding.model, first.stage, first.date.slice(0, 10)))).not.toBe(digest);
      const input = { edition, fingerprint: FINGERPRINT, history: HISTORY, photoFile: async () => undefined };
      const { html } = await bookDocument({ ...input, assessment: { ...given, model: signed } });
      const cells = [...html.matchAll(/<td[^>]*>([^<]*)</gu)].map((match) => match[1]?.trim());
      expect(cells.filter((text) => ['holds', 'lapsed', 'not verified'].includes(text ?? ''))).toEqual(['holds']);
    },
  );

  it('puts the index first in the service edition', () => {
    const order = [...pages.service.matchAll(/data-chapter="([a-z-]+)"/gu)].map((match) => match[1]);
    expect(order.slice(0, 4)).toEqual(['cover', 'emergency', 'contents', 'index']);
  });

  it.each(EDITIONS)('gives each record one home in the %s edition', (edition) => {
    const homes = [...pages[edition].matchAll(/ id="([^"]+)"/gu)].map((match) => match[1]);
    expect(homes.length).toBe(new Set(homes).size);
  });

  it.each(['service', 'shop'] as const)('gives every record of the shell a home in the %s edition', (edition) => {
    const { shell } = smallAssessment().model;
    // A technician gets alloy and filler with the parts; each weld by itself is the shop's.
    const without = edition === 'service' ? ['shell', 'weld'] : ['shell'];
    const kinds = [...shell.byId.values()].filter((entry) => !without.includes(entry.kind));
    const homeless = kinds.filter(({ id }) => !pages[edition].includes(` id="${anchorOf(id)}"`)).map(({ id }) => id);
    expect(homeless).toEqual([]);
  });
});

const anchorOf = (id: string): string => `r-${id.replace(/[^A-Za-z0-9_-]/gu, (sign) => `.${sign.charCodeAt(0).toString(16)}`)}`;

describe('the extinguishers of the emergency page', () => {
  const page = async (use: string) => {
    const file = 'shells/T-1/components.yaml';
    const line = `- {id: EX-1, name: blue cylinder by the door, mass: 5 lb, at: [80 in, 40 in, 20 in]${use}}\n- {id: EX-2, name: fire extinguisher sign, mass: 1 lb, at: [80 in, 40 in, 30 in]}\n`;
    const input = {
      assessment: smallAssessment({ [file]: line }),
      edition: 'owner' as const,
      fingerprint: FINGERPRINT,
      history: HISTORY,
      photoFile: async () => undefined,
    };
    const { html } = await bookDocument(input);
    return html.slice(html.indexOf('id="h-extinguishers"')).split('<h')[0] ?? '';
  };

  it('are those whose recorded use it is, whatever they are called', async () => {
    const recorded = await page(', use: fire extinguisher');
    expect(recorded).toContain('blue cylinder by the door');
    expect(recorded).not.toContain('sign');
    expect(await page('')).toContain('No fire extinguisher is recorded.');
  });
});
