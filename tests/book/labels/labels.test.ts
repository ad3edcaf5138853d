import { createCanvas } from '@napi-rs/canvas';
import jsQR from 'jsqr';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type LabelInput, type Labels, labelDocument } from '../../../src/book/labels/document.js';
import { markers } from '../../../src/book/labels/markers.js';
import { cornerOf, type LabelStock, perSheet, STOCK } from '../../../src/book/labels/stock.js';
import { weightFigures } from '../../../src/book/labels/weight-figures.js';
import { type OpenBrowser, openChromium } from '../../../src/book/print/chromium.js';
import { printDocument } from '../../../src/book/print/print.js';
import { anchor } from '../../../src/model/anchor.js';
import { FINGERPRINT, smallAssessment } from '../small-store.js';

const MM_PER_POINT = 25.4 / 72;
/** Pixels of a rendered page for each point: 144 dpi, as a plain office printer's eye. */
const SCALE = 2;

const input = (more: Partial<LabelInput> = {}): LabelInput => ({
  assessment: smallAssessment(),
  edition: 'service',
  pages: new Map([[anchor('AP-11'), 143]]),
  revision: '5f2c9a7e41d0b6c83f1e2d4a5b6c7d8e9f0a1b2c',
  uncommitted: false,
  date: '2026-07-02',
  fingerprint: FINGERPRINT,
  first: 1,
  withMarkers: false,
  ...more,
});

interface Picture {
  readonly pixels: Uint8ClampedArray;
  readonly width: number;
  readonly height: number;
}

/** A page of a printed file as pixels, cut to a box in millimetres. */
async function picture(pdf: Uint8Array, number: number, box?: readonly [number, number, number, number]): Promise<Picture> {
  const task = getDocument({ data: Uint8Array.from(pdf), verbosity: 0, disableFontFace: true });
  try {
    const page = await (await task.promise).getPage(number);
    const viewport = page.getViewport({ scale: SCALE });
    const canvas = createCanvas(viewport.width, viewport.height);
    const context = canvas.getContext('2d');
    await page.render({ canvas: null, canvasContext: context as unknown as CanvasRenderingContext2D, viewport }).promise;
    const px = (mm: number) => Math.round((mm / MM_PER_POINT) * SCALE);
    const [left, top, width, height] = box ? box.map(px) : [0, 0, viewport.width, viewport.height];
    const cut = context.getImageData(left as number, top as number, width as number, height as number);
    return { pixels: new Uint8ClampedArray(cut.data), width: cut.width, height: cut.height };
  } finally {
    await task.destroy();
  }
}

const boxOf = (stock: LabelStock, at: number) => [...cornerOf(stock, at), stock.widthMm, stock.heightMm] as const;
const read = ({ pixels, width, height }: Picture): string | undefined => jsQR.default(pixels, width, height)?.data;

describe('stock', () => {
  // ISO 216: A4 is 210 mm × 297 mm. ANSI/ASME Y14.1: A size (letter) is 8.5 in × 11 in.
  const paper = { a4: [210, 297], letter: [215.9, 279.4] } as const;

  it.each(['a4', 'letter'] as const)('keeps its labels on %s and apart from each other', (of) => {
    for (const stock of Object.values(STOCK[of])) {
      for (let at = 0; at < perSheet(stock); at++) {
        const [left, top] = cornerOf(stock, at);
        expect(left).toBeGreaterThanOrEqual(3);
        expect(top).toBeGreaterThanOrEqual(5);
        expect(left + stock.widthMm).toBeLessThanOrEqual(paper[of][0] - 3);
        expect(top + stock.heightMm).toBeLessThanOrEqual(paper[of][1] - 5);
      }
      expect(stock.stepXMm).toBeGreaterThanOrEqual(stock.widthMm);
      expect(stock.stepYMm).toBeGreaterThanOrEqual(stock.heightMm);
    }
  });
});

describe('printed labels', () => {
  let browser: OpenBrowser;
  let labels: Labels;
  let pdf: Uint8Array;
  const LONG = `AP-${'X'.repeat(77)}`;

  beforeAll(async () => {
    browser = await openChromium();
    const panels = `
- {id: BP-04, kind: belly, alloy: 5052-H32, thickness: 0.090 in, outline: [[20 in, -20 in, -2 in], [360 in, -20 in, -2 in], [360 in, 20 in, -2 in], [20 in, 20 in, -2 in]]}
- {id: AP-11, kind: access, of: BP-04, name: "<b>trough</b> {{shell}} & splice", outline: [[140 in, -16 in, -2 in], [158 in, -16 in, -2 in], [158 in, -2 in, -2 in], [140 in, -2 in, -2 in]], opening: 14 in x 18 in, facing: down}
- {id: ${LONG}, kind: access, of: BP-04, outline: [[40 in, -16 in, -2 in], [58 in, -16 in, -2 in], [58 in, -2 in, -2 in], [40 in, -2 in, -2 in]], opening: 14 in x 18 in, facing: down}
`;
    labels = labelDocument(
      input({ assessment: smallAssessment({ 'shells/T-1/panels.yaml': panels }), first: 3, withMarkers: true }),
    );
    pdf = (await printDocument(browser, labels.document)).pdf;
  });
  afterAll(() => browser?.close());

  it('say shell, panel and page in a code that another library reads from the printed page', async () => {
    expect(read(await picture(pdf, 3, boxOf(STOCK.letter.panel, 2)))).toBe('T-1 AP-11 p.143');
  });

  it('say an id of eighty letters too, whole', async () => {
    expect(read(await picture(pdf, 3, boxOf(STOCK.letter.panel, 3)))).toBe(`T-1 ${LONG}`);
  });

  it('leave the labels free that are gone from the first sheet', async () => {
    const { pixels } = await picture(pdf, 3, boxOf(STOCK.letter.panel, 0));
    expect(pixels.every((value) => value === 255)).toBe(true);
  });

  it('show what a record says as words, never as markup', async () => {
    expect(labels.document.html).toContain('&lt;b&gt;trough&lt;/b&gt; {{shell}} &amp; splice');
    expect(labels.document.html).not.toContain('<b>trough');
  });

  it('are silent where a hand meets wires behind their own fuse, and nothing else', () => {
    expect(labels.panels.map(({ hazards }) => hazards[0]?.word)).toEqual([undefined, undefined]);
  });
});

describe('markers', () => {
  it('are two for each run, each with its own end first', () => {
    const { shell } = smallAssessment().model;
    const made = markers(shell);
    expect(made.length).toBe(2 * shell.runs.length);
    expect(made.filter((one) => one.run === 'DC-12/1')).toEqual([
      { run: 'DC-12/1', marking: 'BL-12', here: 'DCP', there: 'DC-12/S1' },
      { run: 'DC-12/1', marking: 'BL-12', here: 'DC-12/S1', there: 'DCP' },
    ]);
  });
});

describe('the weight label sheet', () => {
  const figure = (name: RegExp) => weightFigures(smallAssessment()).find((one) => name.test(one.name))?.value ?? '';
  const kgLb = (value: string) =>
    (/^([\d,]+) kg \(([\d,]+) lb\)$/u.exec(value) ?? []).slice(1).map((one) => Number(one.replace(',', '')));

  it('gives each rating in both units, neither above the other', () => {
    // NIST Handbook 44, Appendix C: 1 lb = 0.453 592 37 kg. 33,000 lb is 14,968.55 kg.
    expect(kgLb(figure(/^Gross vehicle/u))).toEqual([14968, 33000]);
    expect(kgLb(figure(/GAWR\), steer/u))).toEqual([5896, 13000]);
  });

  it('adds up as it stands: 49 CFR 571.120 S10, 68 kg (150 lb) for each belted seat, water full', () => {
    const [occcKg = 0, occcLb = 0] = kgLb(figure(/OCCC/u));
    const [waterKg = 0, waterLb = 0] = kgLb(figure(/^Fresh water/u));
    const [cccKg = 0, cccLb = 0] = kgLb(figure(/every belted seat/u));
    expect(cccKg).toBe(occcKg - 68 - waterKg);
    expect(cccLb).toBe(occcLb - 150 - waterLb);
    expect(occcKg).toBeGreaterThan(0);
  });

  it('never rounds a pressure down or a capacity up', () => {
    // 120 psi is 827.37 kPa (NIST SP 811 B.8: 1 psi = 6.894 757 kPa).
    expect(figure(/^Tires, steer/u)).toContain('828 kPa (120 psi) cold');
  });
});
