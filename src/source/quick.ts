/** What is not written in the plain way is left to the reader of all YAML. */
export const NOT_PLAIN = Symbol('not plain');
type NotPlain = typeof NOT_PLAIN;

/** Far below what a record may have: more is told of elsewhere. */
const MOST_KEYS = 200;
const DEEPEST = 20;
const LONGEST_KEY = 100;

const KEY = /[A-Za-z_][A-Za-z0-9_-]*(?=:)/y;
/** Signs that end a line or show nothing, of whichever script. */
const STRANGE = /(?!\n)\p{Cc}|[\xa0\u2028\u2029\ufeff]/u;

const [NEW_LINE, SPACE, HASH, COMMA, COLON, DASH] = [10, 32, 35, 44, 58, 45];
const [DOUBLE, SINGLE, LIST, LIST_END, BACKSLASH, MAP, MAP_END] = [34, 39, 91, 93, 92, 123, 125];

/** True where a text has nothing that changes what stands elsewhere in it: no tab, no alias, no other way to end a line. */
export const mayBePlain = (text: string): boolean => !STRANGE.test(text) && !/[&*]/u.test(text);

/** The whole text as plain data, as the reader of all YAML would give it; {@link NOT_PLAIN} where it is not written in the plain way. */
export function quickDocument(text: string): unknown {
  return new Quick(text, 0, text.length).document();
}

/** One item of a list, from its `- ` at the start of a line to where the next begins. */
export function quickItem(text: string, from: number, to: number): unknown {
  return new Quick(text, from, to).item();
}

/**
 * Reads records as they are mostly written: blocks and lists by indentation or in brackets, plain words and quoted ones on one line, comments
 * between. A key twice, one without a value, one of the shop's own, anything that needs a second look is not plain.
 */
class Quick {
  private depth = 0;

  constructor(
    private readonly text: string,
    private at: number,
    private readonly end: number,
  ) {}

  document(): unknown {
    const column = this.toContent();
    if (column !== 0) return NOT_PLAIN;
    const found = this.block(0);
    return found !== NOT_PLAIN && this.toContent() < 0 ? found : NOT_PLAIN;
  }

  item(): unknown {
    this.at += 2;
    const found = this.entry(0);
    return found !== NOT_PLAIN && this.toContent() < 0 ? found : NOT_PLAIN;
  }

  /** To the first sign of the next line that says something; its column, or less than nothing at the end. Only at the start of a line. */
  private toContent(): number {
    while (this.at < this.end) {
      const start = this.at;
      while (this.sign() === SPACE) this.at++;
      if (this.at >= this.end) return -1;
      if (this.sign() === HASH) this.toLineEnd();
      else if (this.sign() !== NEW_LINE) return this.at - start;
      this.at++;
    }
    return -1;
  }

  private sign(): number {
    return this.at < this.end ? this.text.charCodeAt(this.at) : NEW_LINE;
  }

  private toLineEnd(): void {
    const found = this.text.indexOf('\n', this.at);
    this.at = found < 0 || found > this.end ? this.end : found;
  }

  /** What begins here, at a column of its line. */
  private block(column: number): unknown {
    if (++this.depth > DEEPEST) return NOT_PLAIN;
    const found = this.sign() === DASH ? this.list(column) : this.map(column);
    this.depth--;
    return found;
  }

  private list(column: number): unknown[] | NotPlain {
    const items: unknown[] = [];
    for (;;) {
      if (this.sign() !== DASH || this.text.charCodeAt(this.at + 1) !== SPACE) return NOT_PLAIN;
      this.at += 2;
      const item = this.entry(column);
      if (item === NOT_PLAIN) return NOT_PLAIN;
      items.push(item);
      const start = this.at;
      const next = this.next(column);
      if (next === NOT_PLAIN) return NOT_PLAIN;
      if (next && this.sign() === DASH) continue;
      // A list may stand at the column of its key: what follows there is a key again.
      this.at = start;
      return items;
    }
  }

  /** What stands behind a `- `. */
  private entry(column: number): unknown {
    KEY.lastIndex = this.at;
    const key = KEY.exec(this.text);
    const after = key ? this.text.charCodeAt(KEY.lastIndex + 1) : 0;
    if (key && (after === SPACE || after === NEW_LINE)) return this.block(column + 2);
    return this.inLine(column + 1);
  }

  private map(column: number): Record<string, unknown> | NotPlain {
    const data: Record<string, unknown> = {};
    for (let count = 0; ; count++) {
      const key = this.key(data, count);
      if (key === NOT_PLAIN) return NOT_PLAIN;
      const value = this.sign() === NEW_LINE ? this.below(column) : this.inLine(column);
      if (value === NOT_PLAIN) return NOT_PLAIN;
      data[key] = value;
      const next = this.next(column);
      if (next === NOT_PLAIN) return NOT_PLAIN;
      if (!next) return data;
    }
  }

  /** A key that is not there yet, with its colon and the spaces behind. */
  private key(data: Readonly<Record<string, unknown>>, count: number): string | NotPlain {
    KEY.lastIndex = this.at;
    const key = KEY.exec(this.text)?.[0];
    if (
      key === undefined ||
      key.length > LONGEST_KEY ||
      count >= MOST_KEYS ||
      Object.hasOwn(data, key) ||
      key.startsWith('x-') ||
      key === '__proto__'
    )
      return NOT_PLAIN;
    this.at += key.length + 1;
    if (this.sign() === NEW_LINE) return key;
    if (this.sign() !== SPACE) return NOT_PLAIN;
    while (this.sign() === SPACE) this.at++;
    return this.sign() === NEW_LINE ? NOT_PLAIN : key;
  }

  /** The block below its key. */
  private below(column: number): unknown {
    this.at++;
    const deeper = this.toContent();
    if (deeper > column) return this.block(deeper);
    return deeper === column && this.sign() === DASH ? this.block(column) : NOT_PLAIN;
  }

  /** Whether the next line goes on at this column; what is deeper would belong to the value before. */
  private next(column: number): boolean | NotPlain {
    const start = this.at;
    const found = this.toContent();
    if (found > column) return NOT_PLAIN;
    if (found === column) return true;
    // Whoever is further out looks at that line again.
    this.at = start;
    return false;
  }

  /** A value that begins on this line, to the start of the next. */
  private inLine(column: number): unknown {
    const sign = this.sign();
    const found =
      sign === MAP || sign === LIST
        ? this.flow(column)
        : sign === DOUBLE || sign === SINGLE
          ? this.quoted(sign)
          : this.plain(false);
    if (found === NOT_PLAIN) return NOT_PLAIN;
    const before = this.at;
    while (this.sign() === SPACE) this.at++;
    if (this.sign() === HASH && this.at > before) this.toLineEnd();
    if (this.sign() !== NEW_LINE) return NOT_PLAIN;
    this.at = Math.min(this.at + 1, this.end);
    return found;
  }

  private flow(column: number): unknown {
    if (++this.depth > DEEPEST) return NOT_PLAIN;
    const found = this.sign() === MAP ? this.flowMap(column) : this.flowList(column);
    this.depth--;
    return found;
  }

  private flowMap(column: number): unknown {
    const data: Record<string, unknown> = {};
    this.at++;
    if (this.sign() === MAP_END) {
      this.at++;
      return data;
    }
    for (let count = 0; ; count++) {
      const key = this.key(data, count);
      if (key === NOT_PLAIN || this.sign() === NEW_LINE) return NOT_PLAIN;
      const value = this.inFlow(column);
      if (value === NOT_PLAIN) return NOT_PLAIN;
      data[key] = value;
      if (this.sign() === MAP_END) {
        this.at++;
        return data;
      }
      if (!this.toNextInFlow(column)) return NOT_PLAIN;
    }
  }

  private flowList(column: number): unknown {
    const items: unknown[] = [];
    this.at++;
    if (this.sign() === LIST_END) {
      this.at++;
      return items;
    }
    for (;;) {
      const item = this.inFlow(column);
      if (item === NOT_PLAIN) return NOT_PLAIN;
      items.push(item);
      if (this.sign() === LIST_END) {
        this.at++;
        return items;
      }
      if (!this.toNextInFlow(column)) return NOT_PLAIN;
    }
  }

  private inFlow(column: number): unknown {
    const sign = this.sign();
    const found =
      sign === MAP || sign === LIST
        ? this.flow(column)
        : sign === DOUBLE || sign === SINGLE
          ? this.quoted(sign)
          : this.plain(true);
    while (this.sign() === SPACE) this.at++;
    return found;
  }

  /** Over a comma and the space or line end behind it: without one it may be a comma within a number. */
  private toNextInFlow(column: number): boolean {
    if (this.sign() !== COMMA) return false;
    this.at++;
    if (this.sign() !== SPACE && this.sign() !== NEW_LINE) return false;
    while (this.sign() === SPACE) this.at++;
    if (this.sign() !== NEW_LINE) return true;
    const start = ++this.at;
    while (this.sign() === SPACE) this.at++;
    return this.sign() !== NEW_LINE && this.at - start > column;
  }

  private quoted(quote: number): unknown {
    const start = ++this.at;
    for (let sign = this.sign(); sign !== quote; sign = this.sign()) {
      if (sign === NEW_LINE || (sign === BACKSLASH && quote === DOUBLE)) return NOT_PLAIN;
      this.at++;
    }
    const text = this.text.slice(start, this.at++);
    return this.sign() === quote ? NOT_PLAIN : text;
  }

  private plain(flow: boolean): unknown {
    const start = this.at;
    if (!beginsPlain(this.text, start)) return NOT_PLAIN;
    for (let sign = this.sign(); sign !== NEW_LINE; sign = this.sign()) {
      if (flow && (sign === COMMA || sign === MAP_END || sign === LIST_END)) break;
      if (flow && (sign === MAP || sign === LIST)) return NOT_PLAIN;
      if (sign === COLON && !isWordSign(this.text.charCodeAt(this.at + 1))) return NOT_PLAIN;
      if (sign === HASH && this.text.charCodeAt(this.at - 1) === SPACE) {
        if (flow) return NOT_PLAIN;
        break;
      }
      this.at++;
    }
    if (flow && this.sign() === NEW_LINE) return NOT_PLAIN;
    let end = this.at;
    while (this.text.charCodeAt(end - 1) === SPACE) end--;
    // What follows looks for the space before a comment.
    this.at = end;
    return plainValue(this.text.slice(start, end));
  }
}

const isDigit = (sign: number): boolean => sign >= 48 && sign <= 57;
const isWordSign = (sign: number): boolean => isDigit(sign) || (sign >= 65 && sign <= 90) || (sign >= 97 && sign <= 122);

/** A letter, a figure, or a sign that begins nothing else. */
function beginsPlain(text: string, at: number): boolean {
  const sign = text.charCodeAt(at);
  // _ . / + ( and whatever is beyond ASCII.
  if (isWordSign(sign) || sign > 160 || sign === 95 || sign === 46 || sign === 47 || sign === 43 || sign === 40) return true;
  return sign === DASH && isWordSign(text.charCodeAt(at + 1));
}

/** A number or a yes/no only where it prints back as it was typed. Nothing typed is not plain. */
function plainValue(text: string): unknown {
  if (text === 'null') return NOT_PLAIN;
  if (text === 'true') return true;
  if (text === 'false') return false;
  const sign = text.charCodeAt(0);
  if (isDigit(sign) || sign === DASH) {
    const number = Number(text);
    if (Number.isFinite(number) && String(number) === text) return number;
  }
  return text;
}
