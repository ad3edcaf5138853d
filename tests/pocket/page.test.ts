import { describe, expect, it } from 'vitest';
import { assess } from '../../src/assess.js';
import { smallAssessment } from '../book/small-store.js';
import { hostileStore } from '../security/hostile-store.js';
import { PAYLOADS } from '../security/payloads.js';
import { loadOne } from '../support/store.js';
import { dataIn, smallPage } from './small-page.js';

const EDITIONS = ['owner', 'service'] as const;
/** More than have cards; as many as a record of ten coaches has where there is time. */
const MANY = process.env.SHELLBOOK_FUZZ === undefined ? 1100 : 5000;

const pages = { owner: await smallPage('owner'), service: await smallPage('service') };
const idsIn = (html: string): ReadonlySet<string> =>
  new Set([...html.matchAll(/\sid="([^"]+)"/gu)].map((one) => one[1] as string));

describe.each(EDITIONS)('the %s page', (edition) => {
  const html = pages[edition];

  it('allows no request, and asks for nothing outside itself', () => {
    const policy = /Content-Security-Policy" content="([^"]+)"/u.exec(html)?.[1] ?? '';
    expect(policy).toMatch(
      /^default-src 'none'; img-src data:; style-src 'sha256-[^ ]+'; script-src 'sha256-[^ ]+' 'sha256-[^ ]+' 'sha256-[^ ]+';/u,
    );
    expect(html.replaceAll('http://www.w3.org/2000/svg', '').match(/https?:\/\//u)).toBeNull();
    expect(html.match(/\sstyle="|\son[a-z]+="/u)).toBeNull();
  });

  it('is whole without scripts: every link leads to something in it, and every thing found by search has its card', () => {
    const ids = idsIn(html);
    const lost = [...html.matchAll(/href="#([^"]+)"/gu)].map((one) => one[1] as string).filter((to) => !ids.has(to));
    expect(lost).toEqual([]);
    const listed = new Set([...html.slice(0, html.indexOf('<article')).matchAll(/href="#(r-[^"]+)"/gu)].map((one) => one[1]));
    const cards = [...html.matchAll(/<article class="screen card" id="([^"]+)"/gu)].map((one) => one[1] as string);
    expect(cards.length).toBeGreaterThan(5);
    expect(new Set(cards).size).toBe(cards.length);
    expect((dataIn(html).search as unknown[]).length).toBe(cards.length);
    expect(cards.filter((card) => !listed.has(card) && !/T-1|LIFT/u.test(card)).length).toBeLessThan(3);
  });

  it('has the emergency page one tap away, and says what it is and how old', () => {
    const text = html.slice(html.indexOf('<body>'));
    expect(text.slice(0, text.indexOf('<main'))).toContain('href="#emergency"');
    for (const word of ['5f2c9a7e41', '9d9d9d9d9d9d', '2\u00a0Jul\u00a02026', 'Older than 12 months'])
      expect([word, text.includes(word)]).toEqual([word, true]);
    expect(dataIn(html)).toMatchObject({ shell: 'T-1', edition, date: '2026-07-02', oldAfterMonths: 12 });
  });

  it('has no byte of what its edition may not show', () => {
    const hidden =
      edition === 'service'
        ? ['Orla', 'Vantongeren', 'Ysolde', 'Brackwater', 'Fennimarsh', 'ysolde@']
        : ['Orla', 'Vantongeren', 'Nick in the flange'];
    for (const word of hidden) expect([word, html.toLowerCase().includes(word.toLowerCase())]).toEqual([word, false]);
    expect(/\bK7\b/u.test(html)).toBe(false);
    expect(html.includes('Ysolde Brackwater')).toBe(edition === 'owner');
  });
});

describe('a page in Spanish', () => {
  it('has the same ids and figures, and other words', async () => {
    const spanish = await smallPage('service', { language: 'es' });
    expect([...idsIn(spanish)].sort()).toEqual([...idsIn(pages.service)].sort());
    const figures = (html: string): readonly string[] =>
      [
        ...html
          .slice(html.indexOf('<article'), html.indexOf('</main>'))
          .replace(/<[^>]+>|&#x\w+;/gu, ' ')
          .matchAll(/\d[\d.,/-]*/gu),
      ]
        .map((one) => one[0])
        .sort();
    expect(figures(spanish)).toEqual(figures(pages.service));
    expect(spanish.includes('<html lang="es">')).toBe(true);
    for (const [english, other] of [
      ['Questions', 'Preguntas'],
      ['In an emergency', 'En caso de emergencia'],
    ] as const) {
      expect([spanish.includes(other), spanish.includes(english)]).toEqual([true, false]);
    }
  });
});

describe('bad input', () => {
  it('makes a page of a shell with nothing in it but its name', async () => {
    const { model, findings } = loadOne({});
    const html = await smallPage('service', { assessment: assess(model, findings), history: { commits: [] } });
    expect(html.includes('so there is no drawing')).toBe(true);
    expect(html.includes('not verified')).toBe(true);
    expect(html.includes('not committed')).toBe(true);
  });

  it('makes a page of a shell without services, and says that nothing is recorded', async () => {
    const { model, figures, findings } = smallAssessment();
    const shell = { ...model.shell, services: [], circuits: [], nodes: [], runs: [] };
    const bare = assess({ ...model, shell }, findings);
    expect(figures.access.nodes.length).toBeGreaterThan(0);
    const html = await smallPage('service', { assessment: bare });
    expect(html.includes('Nothing of that kind is recorded.')).toBe(true);
  });

  it('makes a page of a shell with thousands of members that a mail still takes, and says what has no card', async () => {
    const { model, findings } = smallAssessment();
    const [one] = model.shell.members;
    if (!one) throw new Error('no member');
    const members = Array.from({ length: MANY }, (_, i) => ({ ...one, id: `M-${i}`, shape: { ...one.shape } }));
    const figures = { ...smallAssessment().figures, joints: { joints: [], coverage: [] } } as never;
    const html = await smallPage('service', {
      assessment: { model: { ...model, shell: { ...model.shell, members } }, figures, findings },
    });
    expect(html.includes(`${MANY} frame members have no card`)).toBe(true);
    expect(Buffer.byteLength(html)).toBeLessThan(6e6);
    expect(html.includes(`M-${MANY - 1}`)).toBe(true);
  });

  it.each([0].map((at) => PAYLOADS[at] as (typeof PAYLOADS)[number]))(
    'shows what was typed in any text as letters: %s',
    async (_name, words) => {
      const { model, findings } = loadOne(hostileStore(words).files);
      const html = await smallPage('owner', { assessment: assess(model, findings) });
      expect(html.includes(words)).toBe(false);
      expect(html.match(/<script/giu)).toHaveLength(5);
      // One more ends the text of the screens that are held back.
      expect(html.match(/<\/script/giu)).toHaveLength(6);
    },
  );
});
