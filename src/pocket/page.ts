import { createHash } from 'node:crypto';
import type { Assessment } from '../assess.js';
import { forEdition, historyFor } from '../book/editions.js';
import { inLanguage } from '../book/language.js';
import { hiddenFrom } from '../book/redact/hidden.js';
import { cleanMarkup } from '../book/redact/markup.js';
import { cleanText } from '../book/redact/text.js';
import { render, templateText } from '../book/templates.js';
import { MEDIUM_STYLES } from '../drawing/media.js';
import { inUnits } from '../page/pocket/unit-order.js';
import { MEDIA } from '../records/index.js';
import { cardsOf } from './cards.js';
import type { PocketInput } from './input.js';
import { cardIds } from './listed.js';
import { nearData } from './near-data.js';
import { pageData } from './page-data.js';
import { EDITION_NAME, pageParts } from './page-parts.js';
import { pagePictures, pictureId } from './pictures.js';
import { type Pocket, pocketOf, xml } from './pocket.js';
import { unbroken } from './unbroken.js';
import { coachViews } from './views.js';

export interface PocketPage {
  readonly html: string;
  readonly cards: number;
  readonly pictures: number;
  /** Pictures that are not on it. */
  readonly picturesLeft: number;
}

/** One file for a phone: whole without scripts, without any request, and nothing in it that its edition may not show. */
export async function pocketPage(input: PocketInput): Promise<PocketPage> {
  const hidden = hiddenFrom(input.assessment.model, input.edition);
  const { model, figures } = input.assessment;
  // No finding stands on the page, and to judge them would take longer than all else.
  const assessment = inLanguage(forEdition({ model, figures, findings: [] }, input.edition), input.reader.language);
  const { all: pictures, left } = await pagePictures(assessment.model.shell.photos, input.photoFile);
  const p = pocketOf({
    ...input,
    assessment,
    history: historyFor(input.history, input.assessment.model, input.edition),
    views: coachViews(assessment.model),
    pictures: new Map(pictures.map((one) => [one.photo.id, one])),
  });
  const ids = cardIds(p);
  const has = (id: string): boolean => ids.has(id);
  const cards = cardsOf(p);
  const data = pageData(p, cards);
  // Within a script element nothing may look like its end.
  const clean = (_key: string, value: unknown): unknown => (typeof value === 'string' ? cleanText(value, hidden) : value);
  const json = scriptJson(JSON.stringify(data, clean));
  // Places and figures by public ids: there is no text in them.
  const near = scriptJson(JSON.stringify(nearData(assessment)));
  const style = `${templateText('pocket.css')}${mediaStyle()}`;
  const script = input.script.replaceAll('</script', '<\\/script').replaceAll('<!--', '<\\!--');
  const markup = render('pocket', { ...pageParts(p, cards, has, left), reader: p.reader });
  const { shell } = assessment.model;
  const title = p.say('pocket.title', { shell: shell.id, edition: p.say(EDITION_NAME[input.edition]) });
  const html = [
    `<!doctype html>\n<html lang="${p.reader.language}">\n<head>\n<meta charset="utf-8">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; img-src data:; style-src '${hashOf(style)}'; script-src '${hashOf(FIRST_SCRIPT)}' '${hashOf(HOLD_SCRIPT)}' '${hashOf(script)}'; base-uri 'none'; form-action 'none'">`,
    '<meta name="referrer" content="no-referrer">',
    '<meta name="format-detection" content="telephone=no">',
    `<title>${xml(cleanText(title, hidden))}</title>`,
    `<style>${style}</style>\n<script>${FIRST_SCRIPT}</script>\n</head>`,
    // No name that is hidden may change a script: it comes in afterwards.
    inPieces(unbroken(inOrder(cleanMarkup(markup, hidden), assessment))),
    symbols(p),
    `<script type="application/json" id="data">${json}</script>`,
    `<script type="application/json" id="near">${near}</script>`,
    `<script>${script}</script>\n</body>\n</html>\n`,
  ].join('\n');
  return { html, cards: cards.length, pictures: pictures.length, picturesLeft: left };
}

/** A shop that works in millimeters has them first, also without scripts. */
const inOrder = (markup: string, { model }: Assessment): string =>
  model.shop.units === 'metric' ? markup.replace(/>[^<]+</gu, (text) => inUnits(text, 'metric')) : markup;

/** Says that scripts run before anything is painted: the page then shows one screen at a time. */
const FIRST_SCRIPT = "document.documentElement.classList.add('js')";

/**
 * Makes text of the screens that follow, up to the next end of a script: thousands of elements are then made only of what is looked at.
 * Where scripts do not run, for whatever reason, the screens are simply there, and that end is passed over.
 */
const HOLD_SCRIPT = `document.write('\\x3cscript type="text/plain" class="held">')`;
const HOLD = `<script>${HOLD_SCRIPT}</script>`;
const SCREEN_START = /<(?:article|section) class="screen/gu;
/** A browser copies the text of an element again with every stretch of it that it reads: a long one is many times as slow as its pieces. */
const PIECE_CHARS = 200_000;

/** The screens as pieces of text, each whole screens. */
function inPieces(markup: string): string {
  const [first = '', screens = ''] = markup.split('<script></script>');
  const pieces = [first];
  let from = 0;
  for (const { index } of screens.matchAll(SCREEN_START))
    if (index - from >= PIECE_CHARS) {
      pieces.push(`${screens.slice(from, index)}</script>`);
      from = index;
    }
  return [...pieces, screens.slice(from)].join(HOLD);
}

const scriptJson = (json: string): string => json.replaceAll('<', '\\u003c');

const hashOf = (text: string): string => `sha256-${createHash('sha256').update(text).digest('base64')}`;

/** CardLine patterns and colours of the services, as in the book’s drawings; widths and patterns grow to the coach’s millimetres. */
const mediaStyle = (): string =>
  MEDIA.map((medium) => {
    const { colour, dash } = MEDIUM_STYLES[medium].pen;
    const pattern = dash ? `;stroke-dasharray:${dash.map((mm) => Math.round(mm * DRAWN_TIMES)).join(' ')}` : '';
    return `.ly-${medium}{stroke:${colour}}.ly-${medium} .ru{${pattern.slice(1)}}`;
  }).join('');
const DRAWN_TIMES = 30;

/** Pictures, each once: cards show them again by name. */
const symbols = ({ pictures }: Pocket): string =>
  `<svg class="store" aria-hidden="true" focusable="false">${[...pictures.values()]
    .map(
      ({ photo, widthPx, heightPx, jpeg }) =>
        `<symbol id="${pictureId(photo.id)}" viewBox="0 0 ${widthPx} ${heightPx}"><image width="${widthPx}" height="${heightPx}" href="data:image/jpeg;base64,${jpeg.toString('base64')}"/></symbol>`,
    )
    .join('')}</svg>`;
