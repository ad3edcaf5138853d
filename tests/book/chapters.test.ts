import { describe, expect, it } from 'vitest';
import { bookDocument } from '../../src/book/document.js';
import { cssString } from '../../src/book/print/page-rules.js';
import { FINGERPRINT, HISTORY, smallAssessment } from './small-store.js';

const shopBook = async (extra: Record<string, string> = {}): Promise<string> => {
  const input = {
    assessment: smallAssessment(extra),
    edition: 'shop' as const,
    fingerprint: FINGERPRINT,
    history: HISTORY,
    photoFile: async () => undefined,
  };
  const { html } = await bookDocument(input);
  return html.slice(html.indexOf('<body>'));
};

/** Text of the table row that is the home of an anchor. */
const rowOf = (html: string, anchor: string): string => {
  const at = html.indexOf(`id="${anchor}"`);
  const row = html.slice(html.lastIndexOf('<tr', at), html.indexOf('</tr>', at));
  return row
    .replace(/<[^>]+>/gu, ' ')
    .replace(/\s+/gu, ' ')
    .trim();
};

describe('chapters', () => {
  it('says how a splice is reached and what protects its circuit', async () => {
    const html = await shopBook();
    expect(rowOf(html, 'r-DC-12.2fS1')).toContain('AP-11');
    expect(rowOf(html, 'r-DC-12')).toContain('fuse 15 A');
    const index = html.slice(html.indexOf('id="h-by-id"'), html.indexOf('id="h-by-zone"'));
    expect(index).toContain('href="#r-DC-12.2fS1"');
    expect(index).toMatch(/BL-12, see <a[^>]*>DC-12</u);
  });

  it('links each entry of the index to the page of its record', async () => {
    const html = await shopBook();
    const index = html.slice(html.indexOf('id="h-by-name"'), html.indexOf('id="h-by-id"'));
    const targets = [...index.matchAll(/<a class="pg" href="#([^"]+)"/gu)].map((match) => match[1] as string);
    expect(targets.length).toBeGreaterThan(6);
    for (const target of targets) expect(html).toContain(`id="${target}"`);
  });

  it('answers in three steps: contents, index, record', async () => {
    const html = await shopBook();
    const contents = html.slice(html.indexOf('data-chapter="contents"'), html.indexOf('data-chapter="reading"'));
    const index = html.slice(html.indexOf('id="c-index"'), html.indexOf('data-chapter="arrangement"'));
    expect(contents).toContain('href="#c-index"');
    for (const node of smallAssessment().model.shell.nodes) {
      const home = `r-${node.id.replaceAll('/', '.2f')}`;
      expect(index).toContain(`href="#${home}"`);
      expect(rowOf(html, home)).toMatch(/AP-11|exposed|no panel reaches it/u);
    }
    const asked = [...contents.matchAll(/<tr><td><a href="#([^"]+)"/gu)].map((match) => match[1] as string);
    expect(asked.length).toBeGreaterThanOrEqual(12);
    for (const to of asked) expect(html).toContain(`id="${to}"`);
  });

  it('prints member lengths and masses in both systems, as the take-off has them', async () => {
    const row = rowOf(await shopBook(), 'r-SF-L');
    // 382 in; 6 × 2-1/2 × 3/8 in tube: area 5.8125 in² = 3750 mm², times 9702.8 mm and 2700 kg/m³ (TUBE area by A = bd − b₁d₁).
    expect(row).toContain('31 ft 10 in 9,703');
    expect(row).toMatch(/216\.6 98\.2$/u);
  });

  it('rates nothing that nobody declared', async () => {
    const html = await shopBook();
    expect(html).toContain('Lifting, jacking, towing and hanging points: not declared.');
    const declared = await shopBook({
      'shells/T-1/declared.yaml':
        '- {id: LIFT-1, kind: lift, at: [0 in, 0 in, 0 in], rating: 40 kN, by: A. N. Engineer, date: 2026-05-01, document: sheet 4}\n',
    });
    expect(rowOf(declared, 'r-LIFT-1')).toMatch(/40 kN.*A\. N\. Engineer.*sheet 4/u);
  });

  it('says what is left for the next trade, the road limits as information, and how high the centre of gravity lies', async () => {
    const ticket = (id: string, more: string): string =>
      `- {id: ${id}, date: 2026-06-30, stage: walls, scale: SC-9, condition: {fuel: 1, fresh: 0}, ${more}}\n`;
    const html = await shopBook({
      'library/instruments.yaml':
        '- {id: SC-9, kind: axle scale, resolution: 2 lb, tolerance: 0.01 %, calibrated: 2026-01-20, due: 2027-01-20}\n',
      'shells/T-1/weights.yaml':
        ticket('TK-5', 'readings: {steer: 9000 lb, drive: 11000 lb}') +
        ticket(
          'TK-6',
          'readings: {steer: 9250 lb, drive: 10750 lb}, raised: {axle: drive, by: 24 in, level: TK-5, wheel_radius: 20 in}',
        ),
    });
    const part = (id: string): string => {
      const from = html.indexOf(`id="${id}"`);
      return html
        .slice(from, html.indexOf('<h2', from))
        .replace(/<[^>]+>/gu, ' ')
        .replace(/\s+/gu, ' ');
    };
    // At least a tenth of each rating is kept back, and what is not known of the load.
    expect(part('h-budget')).toMatch(/steer .*drive /u);
    expect(part('h-road')).toContain('They are no ratings');
    expect(part('h-road')).toMatch(/single axle steer/u);
    // STA-20: h = r + L·ΔW/(W·tan θ) over the wheelbase of this shell.
    expect(part('h-cg-height')).toMatch(/TK-6 TK-5 \d ft/u);
    expect(part('h-growth')).toContain('Forecast for the finished vehicle');
  });

  it('says in a line what an empty chapter lacks', async () => {
    const html = await shopBook({ 'shells/T-1/welds.yaml': '[]\n', 'shells/T-1/photos/photos.yaml': '[]\n' });
    expect(html).toContain('No welds are recorded.');
    expect(html).toContain('No photos are recorded.');
  });

  it('puts a box in the place of a missing photo', async () => {
    expect(await shopBook()).toMatch(/No picture: its file .*lost\.jpg.* is not in the record\./u);
  });

  it('escapes whatever a record says', async () => {
    const evil = '<script>alert(1)</script><img src=x onerror=alert(2)>"\'{{constructor}}';
    const html = await shopBook({
      'shells/T-1/findings.yaml': `- {id: NC-9, raised: 2026-03-01, of: [SF-L], description: ${JSON.stringify(evil)}}\n`,
    });
    expect(html).not.toContain('<script>alert');
    expect(html).not.toContain('<img src=x');
    expect(html).toContain('&lt;script&gt;alert(1)&lt;/script&gt;');
    expect(html).toContain('{{constructor}}');
  });

  it('writes a style string that no text can end', () => {
    // CSS Syntax Module Level 3, 4.3.4 and 4.3.7: strings end at their quote; an escape ends at one white space.
    expect(cssString('a"; } \\ </style>\n')).toBe('"a\\22 ; } \\5c  \\3c /style\\3e \\a "');
  });
});
