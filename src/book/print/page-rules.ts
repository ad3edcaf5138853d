import type { BookDocument, ChapterHead, PaperSize } from './document.js';
import type { Orientation, PlannedPage } from './paginate.js';

/**
 * The `@page` rules: one named page for each chapter and sheet, with its running head and foot as margin boxes, which a tagged PDF
 * counts as ornament, so that a screen reader is not told them on every page.
 */
export function pageRules(document: BookDocument, pages: readonly PlannedPage[]): string {
  const used = new Set(pages.map((page) => `${page.chapter}-${page.sheet}`));
  const rules = document.chapters.flatMap((chapter) =>
    (['portrait', 'landscape'] as const)
      .filter((sheet) => used.has(`${chapter.key}-${sheet}`))
      .map((sheet) =>
        rule(`${chapter.key}-${sheet}`, document.sheets[sheet], chapter.bare ? '' : margins(document, chapter, pages.length)),
      ),
  );
  return rules.join('\n');
}

function rule(name: string, sheet: PaperSize, boxes: string): string {
  const { top, right, bottom, left } = sheet.margin;
  return `@page ${name} { size: ${sheet.widthMm}mm ${sheet.heightMm}mm; margin: ${top}mm ${right}mm ${bottom}mm ${left}mm; ${boxes} }`;
}

const LOOK = "font: 8pt 'Atkinson Hyperlegible Next'; color: #56636f; white-space: pre;";

function margins(document: BookDocument, { title, pageWords }: ChapterHead, count: number): string {
  const head = `vertical-align: bottom; padding-bottom: 2.4mm; border-bottom: 0.25pt solid #9aa6ae; margin-bottom: 4mm; ${LOOK}`;
  const foot = `vertical-align: top; padding-top: 2.2mm; ${LOOK}`;
  return [
    `@top-left { content: ${cssString(title)}; ${head} font-weight: 600; color: #1b2430; text-align: left }`,
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
