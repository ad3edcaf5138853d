import { type BookDocument, type ChapterHead, marginsOn, type PaperSize, textHeight } from './document.js';
import type { Orientation } from './paginate.js';
import type { HeadedPage } from './running-heads.js';

/**
 * The `@page` rules: one named page for each chapter, sheet and words of the head, with running head and foot as margin boxes, which are
 * ornament for a screen reader (`ornament.ts`). Left and right pages have the binding on their inner side.
 */
export function pageRules(document: BookDocument, pages: readonly HeadedPage[]): string {
  const chapters = new Map(document.chapters.map((chapter) => [chapter.key, chapter]));
  const rules = new Map(pages.map((page) => [page.rule, page]));
  return [...rules.values()]
    .flatMap((page) => {
      const chapter = chapters.get(page.chapter);
      return chapter ? [rule(document, page, chapter, pages.length)] : [];
    })
    .join('\n');
}

function rule(document: BookDocument, page: HeadedPage, chapter: ChapterHead, count: number): string {
  const sheet = document.sheets[page.sheet];
  const boxes = chapter.bare ? '' : margins(document, page, chapter, count);
  const whole = `@page ${page.rule} { size: ${sheet.widthMm}mm ${sheet.heightMm}mm; ${margin(sheet, 'right')}; ${boxes} }`;
  if (!sheet.gutterMm && !page.tab) return whole;
  const side = (which: 'left' | 'right'): string =>
    `@page ${page.rule}:${which} { ${margin(sheet, which)}; ${page.tab && !chapter.bare ? tab(page.tab, sheet, which) : ''} }`;
  return `${whole}\n${side('left')}\n${side('right')}`;
}

function margin(sheet: PaperSize, side: 'left' | 'right'): string {
  const { top, right, bottom, left } = marginsOn(sheet, side);
  return `margin: ${top}mm ${right}mm ${bottom}mm ${left}mm`;
}

const LOOK = "font: 8pt 'Atkinson Hyperlegible Next'; color: #56636f; white-space: pre;";
const INK = '#1b2430';

/** The id at the outer edge, the farther down the later in the book: a thumb finds it in the closed book. */
function tab({ id, share }: NonNullable<HeadedPage['tab']>, sheet: PaperSize, side: 'left' | 'right'): string {
  const down = share * (textHeight(sheet) - TAB_MM);
  const look = `font: 700 9pt 'Atkinson Hyperlegible Mono'; color: #fff; background: ${INK}; text-align: center; vertical-align: middle`;
  return `@${side}-top { content: ${cssString(id)}; height: ${TAB_MM}mm; margin-top: ${down.toFixed(1)}mm; margin-${side === 'left' ? 'right' : 'left'}: ${BESIDE_TEXT_MM}mm; ${look} }`;
}

const TAB_MM = 8;
/** Between the tab and the text. */
const BESIDE_TEXT_MM = 2.5;

function margins(document: BookDocument, page: HeadedPage, { pageWords }: ChapterHead, count: number): string {
  const head = `vertical-align: bottom; padding-bottom: 2.4mm; border-bottom: 0.25pt solid #9aa6ae; margin-bottom: 4mm; ${LOOK}`;
  const foot = `vertical-align: top; padding-top: 2.2mm; ${LOOK}`;
  return [
    `@top-left { content: ${cssString(page.head)}; ${head} font-weight: 600; color: ${INK}; text-align: left }`,
    `@top-right { content: ${cssString(document.runningLeft)}; ${head} text-align: right }`,
    `@bottom-left { content: ${cssString(document.runningFoot)}; ${foot} text-align: left }`,
    `@bottom-right { content: ${pageWords === undefined ? counted(document.pageOf ?? 'Page {page} of {count}', count) : cssString(pageWords)}; ${foot} text-align: right }`,
  ].join(' ');
}

/** CSS content of `Page {page} of {count}`. */
function counted(words: string, count: number): string {
  const [before = '', after = ''] = words.replace('{count}', String(count)).split('{page}');
  return `${cssString(before)} counter(page) ${cssString(after)}`;
}

/** A CSS string of any text: quotes, backslashes and controls as escapes, so that no record can end it. */
export function cssString(text: string): string {
  return `"${text.replace(/["\\<>&\p{Cc}\u2028\u2029]/gu, (sign) => `\\${(sign.codePointAt(0) as number).toString(16)} `)}"`;
}

export type { Orientation };
