import type { Assessment } from '../../assess.js';
import { hazardAct, hazardWord } from '../../query/hazards.js';
import { type Reader, readerOf, say } from '../../words/index.js';
import { fontFaces } from '../fonts.js';
import type { Edition } from '../input.js';
import { travelFacts } from '../overall.js';
import { type BookDocument, sheetsOf } from '../print/document.js';
import { showIn } from '../show.js';
import { lackingWords, withGlyphs } from '../signs.js';
import { escaped, render, templateText } from '../templates.js';
import { qrCode } from './code.js';
import { markers } from './markers.js';
import { type PanelLabel, panelLabels } from './panel-labels.js';
import { cornerOf, type LabelStock, perSheet, STOCK, sheetWords } from './stock.js';
import { stripes } from './stripes.js';
import { weightFigures } from './weight-figures.js';

export interface LabelInput {
  readonly assessment: Assessment;
  readonly edition: Edition;
  /** Where each record stands in that edition; empty where none was printed from this record. */
  readonly pages: ReadonlyMap<string, number>;
  readonly revision?: string;
  readonly uncommitted: boolean;
  /** Date of the revision. */
  readonly date: string;
  readonly fingerprint: string;
  /** Label of the first sheet to begin with, from 1, where some are gone from it. */
  readonly first: number;
  readonly withMarkers: boolean;
}

export interface Labels {
  readonly document: BookDocument;
  readonly panels: readonly PanelLabel[];
  readonly markerCount: number;
}

const QR_MM = 26;
/** The printer keeps so much of a sheet's height free, mm. */
const FOOT_MM = 1.2;

/** All label sheets of a shell as one document: how to print them, the weight figures, then the labels. Pure. */
export function labelDocument(input: LabelInput): Labels {
  const { shop, shell } = input.assessment.model;
  const stock = STOCK[shop.paper];
  const reader = readerOf(shop);
  const panels = panelLabels(input.assessment, input.pages);
  const marked = input.withMarkers ? markers(shell) : [];
  const data = {
    shell: shell.id,
    title: shell.title,
    vin: shell.vin,
    shop: [shop.name, shop.notice].filter(Boolean).join(' · '),
    notice: shop.notice,
    paper: say(reader, `labels.paper.${shop.paper}`),
    editionName: say(reader, `labels.edition.${input.edition}`),
    revision: input.revision?.slice(0, 10) ?? 'not committed',
    committed: input.revision !== undefined,
    uncommitted: input.uncommitted,
    fingerprint: input.fingerprint.slice(0, 12),
    paged: panels.some((one) => one.page !== undefined),
    example: panels[0]?.code ?? `${shell.id} AP-01 p.1`,
    panelStock: { ...stock.panel, words: sheetWords(stock.panel, reader) },
    markerStock: { ...stock.marker, words: sheetWords(stock.marker, reader) },
    placard: travelFacts({ assessment: input.assessment, show: showIn(shop.units) }, reader),
    weights: weightFigures(input.assessment),
    reader,
    panelSheets: onSheets(
      stock.panel,
      panels.map((one) => panelCell(one, reader)),
      input.first - 1,
    ),
    markerSheets: onSheets(
      stock.marker,
      marked.map(({ unused, ...one }) => ({
        ...one,
        ...(unused ? { unused: say(reader, `labels.${unused}`) } : {}),
        idPt: fitted(one.run, stock.marker.widthMm - 4, 11, 4),
      })),
      0,
    ),
  };
  return { document: asDocument(input, render('labels', data)), panels, markerCount: marked.length };
}

function panelCell(one: PanelLabel, reader: Reader) {
  const [worst, ...others] = one.hazards;
  return {
    ...one,
    worst: worst && { word: hazardWord(worst, reader), act: hazardAct(worst, reader) },
    also: others.map((other) => hazardWord(other, reader).toLowerCase()).join(', '),
    stripes: stripes(worst?.grave === true),
    qr: qrCode(one.code, QR_MM),
    idPt: fitted(one.panel, 50, 20, 7),
  };
}

/** Point size at which fixed-width words stay within a width; never under `least`: then they break over lines. */
function fitted(words: string, widthMm: number, mostPt: number, leastPt: number): number {
  // A sign of this typeface is 0.6 of its size wide, and a point is 0.3528 mm.
  const pt = widthMm / (Math.max(1, [...words].length) * 0.6 * 0.3528);
  return Math.round(Math.max(leastPt, Math.min(mostPt, pt)) * 10) / 10;
}

/** Cells with their places, sheet by sheet. */
function onSheets<C extends object>(stock: LabelStock, cells: readonly C[], skip: number) {
  const most = perSheet(stock);
  const sheets: (C & { left: number; top: number; width: number; height: number })[][] = [];
  for (const [at, cell] of cells.entries()) {
    const place = at + skip;
    const [left, top] = cornerOf(stock, place % most);
    const sheet = Math.floor(place / most);
    sheets[sheet] = [...(sheets[sheet] ?? []), { ...cell, left, top, width: stock.widthMm, height: stock.heightMm }];
  }
  return sheets;
}

function asDocument(input: LabelInput, html: string): BookDocument {
  const { shop, shell } = input.assessment.model;
  const { widthMm, heightMm } = sheetsOf(shop.paper).portrait;
  const none = { top: 0, right: 0, bottom: 0, left: 0 };
  const sizes = `:root{--sheet-wide:${widthMm}mm;--sheet-high:${heightMm - FOOT_MM}mm}`;
  const { text, lacking } = withGlyphs(`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; font-src data:">
<title>${escaped(`Labels of shell ${shell.id}`)}</title>
<style>${fontFaces()}</style>
<style>${sizes}
${templateText('labels.css')}</style>
</head>
<body><section class="chapter" data-chapter="labels">
${html}
</section></body>
</html>`);
  return {
    html: text,
    sheets: {
      portrait: { widthMm, heightMm, margin: none },
      landscape: { widthMm: heightMm, heightMm: widthMm, margin: none },
    },
    chapters: [{ key: 'labels', title: 'Labels', bare: true }],
    pictures: new Map(),
    runningLeft: '',
    runningFoot: '',
    date: input.date,
    warnings: lackingWords(lacking),
  };
}
