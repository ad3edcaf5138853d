import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import Handlebars from 'handlebars';
import { anchor } from '../model/anchor.js';
import { type Reader, readerOf, say, type WordKey } from '../words/index.js';
import type { Figure } from './drawings.js';

const HOME = new URL('../../templates/', import.meta.url);

/** Text of a file in the templates' folder. */
export const templateText = (name: string): string => readFileSync(new URL(name, HOME), 'utf8');

const escaped = Handlebars.escapeExpression;
const safe = (markup: string) => new Handlebars.SafeString(markup);

/** The book's own words of markup. None evaluates anything; whatever a record says is escaped on its way in. */
const HELPERS: Record<string, Handlebars.HelperDelegate> = {
  /** Anchor of a record. */
  anchor: (id: unknown) => anchor(String(id)),
  /** A link to a record's home, by its id. */
  ref: (id: unknown) => safe(`<a class="ref" href="#${anchor(String(id))}">${escaped(String(id))}</a>`),
  /** `page 12`, for the record or heading with that anchor. */
  at: (to: unknown, { data }: Handlebars.HelperOptions) =>
    safe(
      `<span class="at-page">${say(readerOf(data.root.book?.reader ?? {}), 'book.at')} <a class="pg" href="#${escaped(String(to))}">000</a></span>`,
    ),
  /** A sentence of the catalogue for the reader of this book: `{{say "care.title"}}`; named values fill its blanks. */
  say(key: unknown, { hash, data }: Handlebars.HelperOptions) {
    const reader = (data.root.reader ?? data.root.book?.reader ?? {}) as Partial<Reader>;
    return (say as (of: Reader, key: WordKey, values: object) => string)(readerOf(reader), key as WordKey, hash);
  },
  /** Anchor of a medium's drawings. */
  drawings: (medium: unknown) => `h-drawings-${String(medium)}`,
  /** The number alone. */
  pageOf: (to: unknown) => safe(`<a class="pg" href="#${escaped(String(to))}">000</a>`),
  /** A drawing of our own: the one thing that is not escaped. */
  drawing: (figure: Figure | undefined) => safe(figure?.svg ?? ''),
};

let engine: typeof Handlebars | undefined;
const compiled = new Map<string, Handlebars.TemplateDelegate>();

function handlebars(): typeof Handlebars {
  if (engine) return engine;
  engine = Handlebars.create();
  engine.registerHelper(HELPERS);
  for (const file of readdirSync(fileURLToPath(new URL('partials/', HOME)))) {
    if (file.endsWith('.hbs')) engine.registerPartial(file.slice(0, -4), templateText(`partials/${file}`));
  }
  return engine;
}

/** A chapter's markup from its template and its plain data. */
export function render(template: string, data: object): string {
  let ready = compiled.get(template);
  if (!ready) {
    ready = handlebars().compile(templateText(`${template}.hbs`), { strict: false, noEscape: false, preventIndent: true });
    compiled.set(template, ready);
  }
  return ready(data, { allowProtoMethodsByDefault: false, allowProtoPropertiesByDefault: false });
}

export { escaped };
