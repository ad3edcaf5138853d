import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import Handlebars from 'handlebars';
import { anchor } from '../model/anchor.js';
import { type English, type Reader, readerOf, say, spelt, type WordKey } from '../words/index.js';
import type { Figure } from './drawings.js';

const HOME = new URL('../../templates/', import.meta.url);

/** Text of a file in the templates' folder. */
export const templateText = (name: string): string => readFileSync(new URL(name, HOME), 'utf8');

const escaped = Handlebars.escapeExpression;
const safe = (markup: string) => new Handlebars.SafeString(markup);

interface Root {
  readonly reader?: Partial<Reader>;
  readonly book?: { readonly reader?: Partial<Reader> };
}
const readerIn = ({ reader, book }: Root): Reader => readerOf(reader ?? book?.reader ?? {});

/** The book's own words of markup. None evaluates anything; whatever a record says is escaped on its way in. */
const HELPERS: Record<string, Handlebars.HelperDelegate> = {
  /** Anchor of a record. */
  anchor: (id: unknown) => anchor(String(id)),
  /** A link to a record's home, by its id. */
  ref: (id: unknown) => safe(`<a class="ref" href="#${anchor(String(id))}">${escaped(String(id))}</a>`),
  /** `page 12`, for the record or heading with that anchor. */
  at: (to: unknown, { data }: Handlebars.HelperOptions) =>
    safe(
      `<span class="at-page">${say(readerIn(data.root), 'book.at')} <a class="pg" href="#${escaped(String(to))}">000</a></span>`,
    ),
  /** A sentence of the catalogue for the reader of this book: `{{say "care.title"}}`; named values fill its blanks. */
  say(key: unknown, { hash, data }: Handlebars.HelperOptions) {
    return (say as (of: Reader, key: WordKey, values: object) => string)(readerIn(data.root), key as WordKey, hash);
  },
  /** A sentence that the program makes, in the reader's English: never what a record says. */
  spell: (text: unknown, { data }: Handlebars.HelperOptions) => spelt(readerIn(data.root), String(text ?? '')),
  /** Anchor of a medium's drawings. */
  drawings: (medium: unknown) => `h-drawings-${String(medium)}`,
  /** The number alone. */
  pageOf: (to: unknown) => safe(`<a class="pg" href="#${escaped(String(to))}">000</a>`),
  /** A drawing of our own: the one thing that is not escaped. */
  drawing: (figure: Figure | undefined) => safe(figure?.svg ?? ''),
};

interface Engine {
  readonly handlebars: typeof Handlebars;
  readonly compiled: Map<string, Handlebars.TemplateDelegate>;
}
const engines = new Map<English, Engine>();

/** A template's own words in the reader's English; what stands in braces or in a tag is none of them. */
const inEnglish = (english: English, template: string): string =>
  template
    .split(/(\{\{.*?\}\}|<[^>]*>)/su)
    .map((piece, i) => (i % 2 === 0 ? spelt({ language: 'en', english }, piece) : piece))
    .join('');

function engineFor(english: English): Engine {
  const known = engines.get(english);
  if (known) return known;
  const handlebars = Handlebars.create();
  handlebars.registerHelper(HELPERS);
  for (const file of readdirSync(fileURLToPath(new URL('partials/', HOME)))) {
    if (file.endsWith('.hbs'))
      handlebars.registerPartial(file.slice(0, -4), inEnglish(english, templateText(`partials/${file}`)));
  }
  const made = { handlebars, compiled: new Map<string, Handlebars.TemplateDelegate>() };
  engines.set(english, made);
  return made;
}

/** A chapter's markup from its template and its plain data. */
export function render(template: string, data: object): string {
  const { english } = readerIn(data);
  const { handlebars, compiled } = engineFor(english);
  let ready = compiled.get(template);
  if (!ready) {
    ready = handlebars.compile(inEnglish(english, templateText(`${template}.hbs`)), {
      strict: false,
      noEscape: false,
      preventIndent: true,
    });
    compiled.set(template, ready);
  }
  return ready(data, { allowProtoMethodsByDefault: false, allowProtoPropertiesByDefault: false });
}

export { escaped };
