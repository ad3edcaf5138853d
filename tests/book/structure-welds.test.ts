import { describe, expect, it } from 'vitest';
import type { Book, ChapterMaker } from '../../src/book/book.js';
import { skins } from '../../src/book/chapters/skins.js';
import { structure } from '../../src/book/chapters/structure.js';
import { welds } from '../../src/book/chapters/welds.js';
import { EDITION_POLICY } from '../../src/book/edition-policy.js';
import { forEdition } from '../../src/book/editions.js';
import type { Edition } from '../../src/book/input.js';
import { things } from '../../src/book/owner/things.js';
import { sheetsOf, textHeight, textWidth } from '../../src/book/print/document.js';
import { projectDrawings } from '../../src/book/project-drawings.js';
import { showIn } from '../../src/book/show.js';
import { render } from '../../src/book/templates.js';
import { anchor } from '../../src/model/anchor.js';
import { judged } from '../demo/store.js';
import { FINGERPRINT, HISTORY } from './small-store.js';

/** The demo's finished shell: nine rejected welds, three of them with a finding record, several hundred without a fault. */
const { assessment } = judged('OV-021');
const { shell, library } = assessment.model;

function bookOf(edition: Edition): Book {
  const sheets = sheetsOf('letter');
  return {
    assessment: forEdition(assessment, edition),
    edition,
    editionName: EDITION_POLICY[edition].name,
    fingerprint: FINGERPRINT,
    dirty: false,
    everybody: 'en',
    history: HISTORY,
    standings: new Map(),
    show: showIn('both'),
    draw: projectDrawings,
    photos: { all: [], byId: new Map(), warnings: [] },
    sheets,
    availableSize: (sheet, lessMm = 0) => ({
      widthMm: textWidth(sheets[sheet]),
      heightMm: textHeight(sheets[sheet]) - 1 - lessMm,
    }),
  };
}

const MAKERS: Readonly<Record<string, ChapterMaker>> = { structure, welds, skins, materials: things };
const printed = new Map<string, string>();

function chapter(edition: Edition, key: string): string {
  const name = `${edition} ${key}`;
  const known = printed.get(name);
  if (known !== undefined) return known;
  const made = (MAKERS[key] as ChapterMaker)(bookOf(edition));
  const html = render(made.template, { ...made, book: { forShop: edition === 'shop' } });
  printed.set(name, html);
  return html;
}

const plain = (html: string): string =>
  html
    .replace(/<[^>]+>/gu, ' ')
    .replaceAll('&#x27;', "'")
    .replace(/[\s\u00a0]+/gu, ' ')
    .trim();
const rowOf = (html: string, id: string): string => {
  const at = html.indexOf(`id="${anchor(id)}"`);
  return html.slice(html.lastIndexOf('<tr', at), html.indexOf('</tr>', at));
};

describe('the weld schedule', () => {
  it('has one line for each weld, under the sheet of the map that shows its number', () => {
    const html = chapter('shop', 'welds');
    for (const { id } of shell.welds) expect(html.split(`id="${anchor(id)}"`).length - 1, id).toBe(1);
    const sheets = [...html.matchAll(/<figure[^>]* id="([^"]+)"[\s\S]*?<\/figure>/gu)];
    const groups = [...html.matchAll(/<tr class="keep group">[\s\S]*?(?=<tr class="keep group">|<\/table>)/gu)].map(
      ([text]) => text,
    );
    expect(groups.length).toBe(sheets.length);
    for (const [figure, to] of sheets) {
      const own = groups.find((group) => group.includes(`href="#${to}"`)) ?? '';
      const lines = [...own.matchAll(/<th scope="row" id="([^"]+)"/gu)].map(([, home]) => home as string);
      expect(lines.length, to).toBeGreaterThan(0);
      for (const home of lines) expect(figure, home).toContain(`href="#${home}"`);
    }
  });

  it('leads from number to line, and from line to members and symbol', () => {
    const html = chapter('shop', 'welds');
    const row = rowOf(html, 'W-0013');
    for (const to of [anchor('SF-L'), anchor('KG-02L'), anchor('weld symbol A')]) expect(row).toContain(`href="#${to}"`);
    expect(html).toContain(`id="${anchor('weld symbol A')}"`);
    for (const id of ['SF-L', 'KG-02L']) expect(chapter('shop', 'structure')).toContain(`id="${anchor(id)}"`);
  });

  it('prints each look in order, and the finding beside the weld', () => {
    const row = rowOf(chapter('shop', 'welds'), 'W-0009');
    expect(plain(row)).toMatch(
      /VT reject \(undercut, 0\.8 mm over 30 mm at the toe\), 29 Sep 2025, J5; VT accept after repair 1, 30 Sep 2025, J5/u,
    );
    expect(row).toContain(`href="#${anchor('NC-01')}"`);
    expect(plain(row)).toContain('NC-01 repair');
  });

  it('lists every rejected weld with how it stands', () => {
    const html = chapter('shop', 'welds');
    const table = html.slice(html.indexOf('id="h-rejected"'), html.indexOf('id="h-weld-symbols"'));
    const rejected = shell.welds.filter(({ inspections }) => inspections.some(({ result }) => result === 'reject'));
    expect(rejected.length).toBe(9);
    for (const { id } of rejected) expect(table).toContain(`href="#${anchor(id)}"`);
    expect(plain(table)).not.toContain('not repaired');
    expect(plain(table)).toMatch(
      /W-0177 .*VT reject \(overlap[^;]*; VT reject after repair 1 \(cold start[^;]*; VT accept after repair 2/u,
    );
  });
});

describe('names', () => {
  const stamps = new Set(shell.welds.map(({ welder }) => welder));
  const welders = [...library.people.values()].filter(({ id }) => stamps.has(id));

  it('of welders stand in the shop’s edition', () => {
    expect(welders.length).toBeGreaterThan(2);
    for (const { name } of welders) expect(chapter('shop', 'welds')).toContain(name);
    expect(plain(rowOf(chapter('shop', 'welds'), 'W-0001'))).toMatch(/\bK7\b/u);
  });

  it.each([
    ['service', 'structure'],
    ['service', 'welds'],
    ['service', 'skins'],
    ['owner', 'materials'],
  ] as const)('and stamps of welders stand nowhere in the %s edition’s chapter of %s', (edition, key) => {
    const html = chapter(edition, key);
    expect(html.length).toBeGreaterThan(1000);
    for (const { id, name } of welders) {
      expect(html).not.toContain(name);
      expect(plain(html)).not.toMatch(new RegExp(`(?<![\\w/-])${id}(?![\\w/-])`, 'u'));
    }
  });

  it('keeps looks and findings in the service edition, without who looked', () => {
    const row = plain(rowOf(chapter('service', 'welds'), 'W-0009'));
    expect(row).toContain(
      'VT reject (undercut, 0.8 mm over 30 mm at the toe), 29 Sep 2025; VT accept after repair 1, 30 Sep 2025',
    );
    expect(row).toContain('NC-01 repair');
  });
});

describe('the structure chapter', () => {
  it('has each member once, under its stage, with the stage’s drawings', () => {
    const html = chapter('shop', 'structure');
    for (const { id } of shell.members) expect(html.split(`id="${anchor(id)}"`).length - 1, id).toBe(1);
    const stages = [...html.matchAll(/<h2 id="([^"]+)" class="break">([^<]+)</gu)].map(([, , name]) => name);
    expect(stages).toEqual(['Subframe and dampers', 'Floor frame', 'Walls and openings', 'Roof trusses']);
  });

  it('says of each heat which certificate it has', () => {
    const html = plain(chapter('shop', 'structure'));
    expect(html).toMatch(/primary structure \(\d+\.\d %\) is traced to its heat/u);
    expect(html).toMatch(/EN 10204 3\.1/u);
  });

  it('says what softened metal is tinted on the frames', () => {
    expect(chapter('shop', 'structure')).toContain('Tinted: primary members within 25 mm (1 in) of a weld');
  });
});

describe('findings', () => {
  it('stand beside the panel and the opening that they are about', () => {
    const html = chapter('shop', 'skins');
    expect(plain(rowOf(html, 'SK-L-05'))).toContain('NC-05 repair');
    const card = html.slice(
      html.indexOf(`id="${anchor('SO-1')}"`),
      html.indexOf('</dl>', html.indexOf(`id="${anchor('SO-1')}"`)),
    );
    for (const [id, decision] of [
      ['NC-04', 'rework'],
      ['NC-07', 'rework'],
      ['NC-10', 'use as is'],
    ] as const)
      expect(plain(card)).toContain(`${id} ${decision}`);
    expect(plain(card)).toContain('Header by calculation');
  });

  it('are only those that the owner is told of in the owner’s edition', () => {
    expect(chapter('owner', 'materials')).not.toContain('NC-05');
    expect(chapter('service', 'skins')).toContain('NC-05');
  });
});
