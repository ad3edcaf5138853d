/**
 * The markup of a book read strictly: we write every tag ourselves, so whatever is not one of ours in our own form has come out of
 * a record. Nothing is mended as a browser would.
 */
export interface Tag {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
}

export interface Markup {
  readonly tags: readonly Tag[];
  /** What stands between the tags, as written: escaped. */
  readonly words: string;
  /** What stands in style elements. */
  readonly styles: readonly string[];
  /** What is not in our form, with a little of its surroundings. */
  readonly faults: readonly string[];
}

/** HTML standard, void elements: these have no end. */
const VOID = new Set(['meta', 'link', 'img', 'br', 'hr', 'col', 'input']);
const ATTRIBUTE = /\s+([a-zA-Z][\w:-]*)="([^"<>]*)"/uy;
const NAME = /<([a-zA-Z][\w-]*)/uy;

export function readMarkup(html: string): Markup {
  const tags: Tag[] = [];
  const words: string[] = [];
  const styles: string[] = [];
  const faults: string[] = [];
  const open: string[] = [];
  const fault = (what: string, at: number): void => void faults.push(`${what}: ${html.slice(Math.max(0, at - 60), at + 60)}`);
  let at = html.startsWith('<!doctype html>\n') ? 16 : 0;
  while (at < html.length) {
    const next = html.indexOf('<', at);
    const said = html.slice(at, next === -1 ? html.length : next);
    if (said.includes('>')) fault('a sign that ends no tag', at + said.indexOf('>'));
    words.push(said);
    if (next === -1) break;
    const end = /<\/([a-zA-Z][\w-]*)>/uy;
    end.lastIndex = next;
    const closed = end.exec(html);
    if (closed) {
      if (open.pop() !== closed[1]) fault('an end without its beginning', next);
      at = end.lastIndex;
      continue;
    }
    const tag = readTag(html, next);
    if (!tag) {
      fault('no tag of ours', next);
      at = next + 1;
      continue;
    }
    tags.push(tag.tag);
    at = tag.end;
    if (tag.closed || VOID.has(tag.tag.name)) continue;
    if (tag.tag.name === 'style') {
      const styled = html.indexOf('</style>', at);
      styles.push(html.slice(at, styled === -1 ? html.length : styled));
      at = styled === -1 ? html.length : styled;
    }
    open.push(tag.tag.name);
  }
  if (open.length > 0) faults.push(`without end: ${open.join(' ')}`);
  return { tags, words: words.join('\n'), styles, faults };
}

function readTag(html: string, from: number): { readonly tag: Tag; readonly end: number; readonly closed: boolean } | undefined {
  NAME.lastIndex = from;
  const name = NAME.exec(html)?.[1];
  if (name === undefined) return undefined;
  const attributes: Record<string, string> = {};
  ATTRIBUTE.lastIndex = NAME.lastIndex;
  let end = NAME.lastIndex;
  for (let one = ATTRIBUTE.exec(html); one; one = ATTRIBUTE.exec(html)) {
    attributes[one[1] as string] = one[2] as string;
    end = ATTRIBUTE.lastIndex;
  }
  if (html[end] === '>') return { tag: { name, attributes }, end: end + 1, closed: false };
  return html.startsWith('/>', end) ? { tag: { name, attributes }, end: end + 2, closed: true } : undefined;
}

/** Every element and attribute that our templates and drawings write. */
const ELEMENTS = new Set(
  'html head meta title style body section aside header footer main div span p a b strong sup code h1 h2 h3 ol ul li dl dt dd br table colgroup col thead tbody tr th td figure figcaption img svg desc g path rect circle text'.split(
    ' ',
  ),
);
const ATTRIBUTES = new Set(
  'lang charset http-equiv content class id href src alt style scope colspan data-sheet data-side data-tab data-tied data-columns data-chapter data-code xmlns role aria-hidden aria-label width height viewBox preserveAspectRatio shape-rendering font-family font-size font-weight fill fill-rule stroke stroke-width stroke-dasharray stroke-linecap stroke-linejoin text-anchor transform d x y cx cy r'.split(
    ' ',
  ),
);

/** Where a value may lead: places in the book itself, its own pictures, and pictures that stand in it; sizes and names of ours. */
const VALUES: Readonly<Record<string, RegExp>> = {
  href: /^#[\p{L}\p{N}.%_-]+$/u,
  src: /^(?:\/photos\/[\w.%-]+|data:image\/[a-z+]+;base64,[\w+/=]+)$/u,
  style: /^(?:[a-z-]+: ?[\w.% -]+;?)+$/u,
  class: /^[\w -]*$/u,
  id: /^[\p{L}\p{N}.%_-]+$/u,
  fill: /^(?:#[\da-f]{3,6}|none)$/u,
  stroke: /^(?:#[\da-f]{3,6}|none)$/u,
};

/** What a record must have put into a page's markup. Empty where all of it is ours. */
export function foreign({ tags, faults }: Markup): readonly string[] {
  const said = new Set(faults);
  for (const { name, attributes } of tags) {
    if (!ELEMENTS.has(name)) said.add(`element ${name}`);
    for (const [key, value] of Object.entries(attributes)) {
      if (!ATTRIBUTES.has(key)) said.add(`attribute ${name} ${key}`);
      const form = VALUES[key];
      if (form && !form.test(value)) said.add(`${name} ${key}="${value.slice(0, 80)}"`);
    }
  }
  return [...said];
}
