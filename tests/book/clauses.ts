/**
 * What ISO 14289-1:2014 (PDF/UA-1), ISO 19005-3:2012 (PDF/A-3) and ISO 32000-1:2008 ask of a printed book, clause by clause, as far as a
 * program can tell. No registry that the project installs from carries a validator of either standard, so each clause is read here from
 * the file with pdf-lib. The numbers of the clauses and what they ask are from memory, in our own words. Left to a reader's judgement, and so not here: whether a description says what a drawing shows, whether the
 * reading order makes sense, contrast (`style.test.ts` has it for the style sheet).
 */

import { inflateSync } from 'node:zlib';
import { PDFArray, PDFBool, PDFDict, PDFName, PDFNumber, type PDFObject, PDFRawStream } from '@cantoo/pdf-lib';
import { create } from 'fontkit';
import { attribute, dictIn, type Element, listIn, nameIn, numberIn, type TaggedFile, textIn } from './tagged-file.js';

export interface Clause {
  readonly standard: 'ISO 14289-1' | 'ISO 19005-3' | 'ISO 32000-1';
  readonly clause: string;
  /** What it asks, in a few words of our own. */
  readonly asks: string;
  /** What in the file does not keep to it, one line each; `looked` counts what was looked at, so that nothing passes for want of anything. */
  test(file: TaggedFile): Verdict;
}

export interface Verdict {
  readonly looked: number;
  readonly faults: readonly string[];
}

const each = <T>(things: readonly T[], fault: (thing: T) => string | false | undefined): Verdict => ({
  looked: things.length,
  faults: things.map(fault).filter((one): one is string => typeof one === 'string'),
});
const one = (holds: boolean, fault: string): Verdict => ({ looked: 1, faults: holds ? [] : [fault] });
const isTrue = (value: PDFObject | undefined): boolean => value instanceof PDFBool && value.asBoolean();
const key = (text: string): PDFName => PDFName.of(text);
const ofRole = (file: TaggedFile, role: RegExp): readonly Element[] => file.elements.filter((element) => role.test(element.role));
const where = (element: Element): string => `${element.type} ${textIn(element.dict, 'ID') || textIn(element.dict, 'Alt')}`.trim();
const kidsBut = (allowed: RegExp) => (element: Element) => {
  const other = element.kids.find((kid) => !allowed.test(kid.role));
  return other && `${where(element)} holds ${other.type}`;
};
const within = (parents: RegExp) => (element: Element) =>
  !(element.parent && parents.test(element.parent.role)) && `${where(element)} in ${element.parent?.type}`;

/** ISO 32000-1, 14.8.4: every standard structure type. */
const STANDARD = new Set(
  (
    'Document Part Art Sect Div BlockQuote Caption TOC TOCI Index NonStruct Private P H H1 H2 H3 H4 H5 H6 L LI Lbl LBody Table TR TH TD THead ' +
    'TBody TFoot Span Quote Note Reference BibEntry Code Link Annot Ruby RB RT RP Warichu WT WP Figure Formula Form'
  ).split(' '),
);

const UA: readonly Omit<Clause, 'standard'>[] = [
  {
    clause: '5',
    asks: 'the metadata say part 1 of PDF/UA',
    test: (file) => one(/<pdfuaid:part>1<\/pdfuaid:part>/u.test(file.metadata()), 'no pdfuaid:part'),
  },
  {
    clause: '7.1',
    asks: 'all that is drawn is tagged or marked as ornament, neither within the other; running heads and feet by their kind (7.8)',
    test: allMarked,
  },
  {
    clause: '7.1',
    asks: 'the file says that it is tagged, and does not suspect its tags',
    test: (file) => {
      const info = dictIn(file.catalog, 'MarkInfo');
      return one(isTrue(info?.lookup(key('Marked'))) && !isTrue(info?.lookup(key('Suspects'))), 'not Marked');
    },
  },
  {
    clause: '7.1',
    asks: 'every kind of tag is a standard one or mapped to one, and no standard one is mapped to another',
    test: (file) => {
      const roles = dictIn(file.catalog.lookup(key('StructTreeRoot'), PDFDict), 'RoleMap');
      const remapped = (roles?.keys() ?? []).map((name) => name.decodeText()).filter((name) => STANDARD.has(name));
      const odd = each(file.elements, ({ role }) => !STANDARD.has(role) && role);
      return { looked: odd.looked, faults: [...new Set([...odd.faults, ...remapped])] };
    },
  },
  {
    clause: '7.1',
    asks: 'a title in the metadata, shown in the window’s head',
    test: (file) => {
      const shown = dictIn(file.catalog, 'ViewerPreferences')?.lookup(key('DisplayDocTitle'));
      const title = /<dc:title><rdf:Alt><rdf:li xml:lang="x-default">[^<]{10,}</u.test(file.metadata());
      return one(isTrue(shown) && title, 'no title, or not shown');
    },
  },
  {
    clause: '7.2',
    asks: 'the language is known, as a tag of RFC 3066, and so is that of bookmarks, descriptions and metadata',
    test: (file) => one(/^[a-z]{2}(?:-[A-Z]{2})?$/u.test(textIn(file.catalog, 'Lang')), textIn(file.catalog, 'Lang')),
  },
  {
    clause: '7.2',
    asks: 'a table holds rows',
    test: (file) => each(ofRole(file, /^Table$/u), kidsBut(/^(?:TR|THead|TBody|TFoot|Caption)$/u)),
  },
  {
    clause: '7.2',
    asks: 'a row stands in a table',
    test: (file) => each(ofRole(file, /^TR$/u), within(/^(?:Table|THead|TBody|TFoot)$/u)),
  },
  { clause: '7.2', asks: 'a row holds cells', test: (file) => each(ofRole(file, /^TR$/u), kidsBut(/^T[HD]$/u)) },
  { clause: '7.2', asks: 'a cell stands in a row', test: (file) => each(ofRole(file, /^T[HD]$/u), within(/^TR$/u)) },
  { clause: '7.2', asks: 'a list holds items', test: (file) => each(ofRole(file, /^L$/u), kidsBut(/^(?:L|LI|Caption)$/u)) },
  { clause: '7.2', asks: 'an item stands in a list', test: (file) => each(ofRole(file, /^LI$/u), within(/^L$/u)) },
  {
    clause: '7.2',
    asks: 'an item holds its label and its body',
    test: (file) =>
      each(ofRole(file, /^LI$/u), (item) => kidsBut(/^(?:Lbl|LBody)$/u)(item) || (item.marks > 0 && 'an item with bare text')),
  },
  { clause: '7.2', asks: 'a body stands in an item', test: (file) => each(ofRole(file, /^LBody$/u), within(/^LI$/u)) },
  {
    clause: '7.3',
    asks: 'every figure is described, in more than its title',
    test: (file) =>
      each(ofRole(file, /^Figure$/u), ({ dict }) => {
        const alt = textIn(dict, 'Alt').trim();
        // A numbered badge of the emergency page is a number and the group that it belongs to.
        return !/^.*\S{1,} \S{2,}/u.test(alt) && `described as “${alt}”`;
      }),
  },
  { clause: '7.4.2', asks: 'headings begin at the first level and skip none', test: headingsInOrder },
  {
    clause: '7.4.4',
    asks: 'headings say their level',
    test: (file) => each(ofRole(file, /^H\d?$/u), ({ role }) => role === 'H' && 'a heading without a level'),
  },
  {
    clause: '7.5',
    asks: 'each header cell says whether it heads a row or a column',
    test: (file) =>
      each(ofRole(file, /^TH$/u), (cell) => {
        const scope = attribute(cell, 'Scope');
        return !(scope instanceof PDFName && /^(?:Row|Column|Both)$/u.test(scope.decodeText())) && `${where(cell)} heads nothing`;
      }),
  },
  { clause: '7.5', asks: 'a table has as many cells in one row as in the other', test: evenRows },
  {
    clause: '7.5',
    asks: 'a table has header cells',
    test: (file) =>
      each(
        ofRole(file, /^Table$/u),
        (table) => !table.kids.some((row) => row.kids.some(({ role }) => role === 'TH')) && 'a table without headers',
      ),
  },
  {
    clause: '7.7',
    asks: 'no formula is left without words',
    test: (file) =>
      one(
        ofRole(file, /^Formula$/u).every(({ dict }) => textIn(dict, 'Alt') !== ''),
        'a formula',
      ),
  },
  {
    clause: '7.9',
    asks: 'notes have an id each',
    test: (file) => {
      const ids = ofRole(file, /^Note$/u).map(({ dict }) => textIn(dict, 'ID'));
      return one(!ids.includes('') && new Set(ids).size === ids.length, 'a note without an id of its own');
    },
  },
  {
    clause: '7.10',
    asks: 'no layers that could be switched off',
    test: (file) => one(!file.catalog.has(key('OCProperties')), 'layers'),
  },
  {
    clause: '7.11',
    asks: 'carried files have both names',
    test: (file) =>
      each(file.ofType('Filespec'), (spec) => (!textIn(spec, 'F') || !textIn(spec, 'UF')) && 'a file without a name'),
  },
  {
    clause: '7.16',
    asks: 'nothing keeps a screen reader out',
    test: (file) => one(file.pdf.context.trailerInfo.Encrypt === undefined, 'encrypted'),
  },
  {
    clause: '7.18.1',
    asks: 'annotations are links, and nothing else',
    test: (file) =>
      each(
        file.annotations(),
        ({ page, dict }) => nameIn(dict, 'Subtype') !== 'Link' && `page ${page}: ${nameIn(dict, 'Subtype')}`,
      ),
  },
  {
    clause: '7.18.3',
    asks: 'pages with links are walked in the order of the tags',
    test: (file) =>
      each(
        file.pdf.getPages(),
        ({ node }) => listIn(node, 'Annots').length > 0 && nameIn(node, 'Tabs') !== 'S' && 'a page without Tabs S',
      ),
  },
  {
    clause: '7.18.5',
    asks: 'each link stands in a tag of its own',
    test: (file) => {
      const tagged = new Set(ofRole(file, /^Link$/u).flatMap(({ annotations }) => annotations));
      return each(file.annotations(), ({ page, number }) => !tagged.has(number) && `a link on page ${page}`);
    },
  },
  {
    clause: '7.18.5',
    asks: 'each link says in words where it leads',
    test: (file) => each(file.annotations(), ({ page, dict }) => textIn(dict, 'Contents').length < 3 && `page ${page}: ${dict}`),
  },
  {
    clause: '7.20',
    asks: 'nothing is shown of another file',
    test: (file) => one(!file.streams.some(({ dict }) => dict.has(key('Ref'))), 'Ref'),
  },
  {
    clause: '7.21.3',
    asks: 'fonts of many signs are found by their glyphs’ numbers',
    test: (file) =>
      each(fontsOf(file), ({ font, cid }) => {
        const map = cid.lookup(key('CIDToGIDMap'));
        const byGlyph = nameIn(cid, 'Subtype') !== 'CIDFontType2' || map instanceof PDFRawStream || map === key('Identity');
        return !(nameIn(font, 'Encoding') === 'Identity-H' && byGlyph) && nameIn(font, 'BaseFont');
      }),
  },
  {
    clause: '7.21.4.1',
    asks: 'every font is carried, with each glyph that is shown',
    test: (file) =>
      each(fontsOf(file), ({ font, program, cid }) => {
        if (!program) return `${nameIn(font, 'BaseFont')} is not carried`;
        const count = fontProgram(program).numGlyphs;
        const most = Math.max(...widthsOf(cid).keys());
        return most >= count && `${nameIn(font, 'BaseFont')} has ${count} glyphs, and ${most} is used`;
      }),
  },
  {
    clause: '7.21.5',
    asks: 'widths in the file are those of the font',
    test: (file) =>
      each(fontsOf(file), ({ font, program, cid }) => {
        if (!program || nameIn(cid, 'Subtype') !== 'CIDFontType2') return false;
        const { advances, unitsPerEm } = fontProgram(program);
        // A thousandth of the letter's height, as validators allow for rounding.
        const odd = [...widthsOf(cid)].find(
          ([glyph, width]) => Math.abs(width - ((advances[glyph] ?? 0) * 1000) / unitsPerEm) > 1,
        );
        return odd && `${nameIn(font, 'BaseFont')} glyph ${odd[0]}: ${odd[1]}`;
      }),
  },
  {
    clause: '7.21.7',
    asks: 'every sign shown has a Unicode value that is none of no meaning',
    test: (file) =>
      each(fontsOf(file), ({ font, cid }) => {
        const map = unicodeOf(font);
        const lacking = [...widthsOf(cid).keys()].filter((glyph) => glyph > 0 && !map.has(glyph));
        const without = [...map.values()].filter((text) => /[\0\uFEFF\uFFFE]/u.test(text));
        return (
          (lacking.length > 0 || without.length > 0) &&
          `${nameIn(font, 'BaseFont')}: ${lacking.length} glyphs, ${without.length} values`
        );
      }),
  },
];

const ARCHIVE: readonly Omit<Clause, 'standard'>[] = [
  {
    clause: '6.1.2',
    asks: 'a head with the version, then four bytes above 127',
    test: ({ bytes }) =>
      one(/^%PDF-1\.[0-7]\n%[\x80-\xff]{4}\n/u.test(Buffer.from(bytes.subarray(0, 16)).toString('latin1')), 'another head'),
  },
  {
    clause: '6.1.3',
    asks: 'two identifiers, no encryption, nothing behind the end',
    test: ({ bytes, pdf }) =>
      one(
        pdf.context.trailerInfo.ID instanceof PDFArray &&
          pdf.context.trailerInfo.Encrypt === undefined &&
          Buffer.from(bytes.subarray(-6)).toString('latin1') === '%%EOF\n',
        'another trailer',
      ),
  },
  {
    clause: '6.1.7.2',
    asks: 'no stream in another file, none packed by LZW or encrypted',
    test: (file) =>
      each(
        file.streams,
        ({ dict }) => (dict.has(key('F')) || /LZW|Crypt/u.test(String(dict.get(key('Filter'))))) && String(dict),
      ),
  },
  {
    clause: '6.1.13',
    asks: 'names of 127 bytes, strings of 32,767, 28 stacked states at most',
    test: (file) => each(file.dicts, (dict) => dict.keys().some((name) => name.decodeText().length > 127) && 'a long name'),
  },
  {
    clause: '6.2.3',
    asks: 'colours mean what a carried profile says, and there is one',
    test: (file) => {
      const intents = listIn(file.catalog, 'OutputIntents').map((intent) => file.pdf.context.lookup(intent, PDFDict));
      const [intent] = intents;
      const isWhole =
        intent && nameIn(intent, 'S') === 'GTS_PDFA1' && intent.lookup(key('DestOutputProfile')) instanceof PDFRawStream;
      return one(intents.length === 1 && isWhole === true, 'no output intent');
    },
  },
  {
    clause: '6.2.4.3',
    asks: 'no colours of ink where the profile is one of light',
    test: (file) => each(file.dicts, (dict) => /DeviceCMYK/u.test(String(dict.get(key('ColorSpace')))) && 'DeviceCMYK'),
  },
  {
    clause: '6.2.8',
    asks: 'pictures are not smoothed and have no alternates',
    test: (file) =>
      each(
        file.dicts.filter((dict) => nameIn(dict, 'Subtype') === 'Image'),
        (dict) =>
          (dict.has(key('Alternates')) || dict.has(key('OPI')) || isTrue(dict.lookup(key('Interpolate')))) && String(dict),
      ),
  },
  {
    clause: '6.3.1',
    asks: 'no film, sound or three-dimensional annotation',
    test: (file) =>
      each(file.annotations(), ({ dict }) => /^(?:3D|Sound|Screen|Movie)$/u.test(nameIn(dict, 'Subtype')) && String(dict)),
  },
  {
    clause: '6.3.2',
    asks: 'annotations print and are not hidden',
    test: (file) =>
      each(file.annotations(), ({ page, dict }) => ((numberIn(dict, 'F') ?? 0) & 0b100111) !== 4 && `page ${page}: ${dict}`),
  },
  {
    clause: '6.5',
    asks: 'nothing runs: no script, no action on opening, no launching',
    test: (file) =>
      each(file.dicts, (dict) => {
        const runs = ['JS', 'AA', 'OpenAction', 'JavaScript', 'Launch'].find((name) => dict.has(key(name)));
        return (
          runs ??
          (/^(?:Launch|Sound|Movie|ResetForm|ImportData|JavaScript|Hide|SetOCGState|Rendition|Trans|GoTo3DView)$/u.test(
            nameIn(dict, 'S'),
          ) &&
            nameIn(dict, 'S'))
        );
      }),
  },
  {
    clause: '6.6.2.1',
    asks: 'metadata that anybody can read, in UTF-8',
    test: (file) => one(/^<\?xpacket begin="\uFEFF" id=/u.test(file.metadata()), 'packed or missing'),
  },
  {
    clause: '6.6.2.3',
    asks: 'a schema that the standard does not know is described',
    test: (file) => one(/<pdfaSchema:prefix>pdfuaid</u.test(file.metadata()), 'pdfuaid is not described'),
  },
  {
    clause: '6.6.4',
    asks: 'part 3, level A',
    test: (file) => one(/<pdfaid:part>3<[\s\S]*<pdfaid:conformance>A</u.test(file.metadata()), 'no claim'),
  },
  {
    clause: '6.7.2',
    asks: 'one tree of tags, whose top is a document',
    test: (file) =>
      one(file.elements[0]?.role === 'Document' && file.elements.filter(({ parent }) => !parent).length === 1, 'no tree'),
  },
  {
    clause: '6.8',
    asks: 'each carried file says what it is to the book, its kind and its day, and belongs to the whole document',
    test: (file) => {
      const carried = listIn(file.catalog, 'AF').map((spec) => file.pdf.context.lookup(spec, PDFDict));
      return each(file.ofType('Filespec'), (spec) => {
        const inside = dictIn(spec, 'EF')?.lookup(key('UF'));
        const isWhole =
          carried.includes(spec) &&
          /^(?:Source|Data|Alternative|Supplement|Unspecified)$/u.test(nameIn(spec, 'AFRelationship')) &&
          inside instanceof PDFRawStream &&
          nameIn(inside.dict, 'Subtype').includes('/') &&
          textIn(dictIn(inside.dict, 'Params') as PDFDict, 'ModDate').startsWith('D:');
        return !isWhole && textIn(spec, 'UF');
      });
    },
  },
  { clause: '6.9', asks: 'no layers', test: (file) => one(!file.catalog.has(key('OCProperties')), 'layers') },
  {
    clause: '6.11',
    asks: 'nothing that a reader must be able to do',
    test: (file) => one(!file.catalog.has(key('Requirements')), 'Requirements'),
  },
];

const TAGS: readonly Omit<Clause, 'standard'>[] = [
  {
    clause: '14.7.4.4',
    asks: 'the next free key of the tree that leads back is above every key in use',
    test: (file) => {
      const next = numberIn(file.catalog.lookup(key('StructTreeRoot'), PDFDict), 'ParentTreeNextKey') ?? 0;
      return each(
        file.annotations(),
        ({ dict }) => (numberIn(dict, 'StructParent') ?? next) >= next && `${numberIn(dict, 'StructParent')}`,
      );
    },
  },
  {
    clause: '14.9.2',
    asks: 'the bookmarks begin with the chapters',
    test: (file) => {
      const outlines = dictIn(file.catalog, 'Outlines');
      return one((numberIn(outlines as PDFDict, 'Count') ?? 0) !== 0, 'no bookmarks');
    },
  },
];

export const CLAUSES: readonly Clause[] = [
  ...UA.map((clause) => ({ standard: 'ISO 14289-1', ...clause }) as const),
  ...ARCHIVE.map((clause) => ({ standard: 'ISO 19005-3', ...clause }) as const),
  ...TAGS.map((clause) => ({ standard: 'ISO 32000-1', ...clause }) as const),
];

/** Pages of a long book whose instructions are read line by line: every so many. */
const EVERY = Number(process.env.SHELLBOOK_FUZZ ?? 0) > 0 ? 1 : 7;

function allMarked(file: TaggedFile): Verdict {
  const faults: string[] = [];
  const count = file.pdf.getPageCount();
  const kinds = new Set<string>();
  let looked = 0;
  for (let page = 1; page <= count; page += count > 60 ? EVERY : 1) {
    const open: string[] = [];
    for (const line of file.contents(page).split('\n')) {
      const operator = /[^\s>]*$/u.exec(line.trimEnd())?.[0] ?? '';
      if (operator === 'BDC' || operator === 'BMC') {
        const tag = /^\/(\w+)/u.exec(line)?.[1] ?? '';
        if (open.length > 0) faults.push(`page ${page}: ${tag} within ${open.at(-1)}`);
        open.push(tag);
        kinds.add(/\/Subtype \/(\w+)/u.exec(line)?.[1] ?? tag);
      } else if (operator === 'EMC') open.pop();
      else if (/^(?:Tj|TJ|f\*?|S|s|B\*?|b\*?|Do|sh)$/u.test(operator)) {
        looked++;
        if (open.length === 0) faults.push(`page ${page}: bare ${line.slice(0, 40)}`);
      }
    }
    if (open.length > 0) faults.push(`page ${page}: ${open.at(-1)} never ends`);
  }
  for (const kind of ['Header', 'Footer']) if (!kinds.has(kind)) faults.push(`no ${kind}`);
  return { looked, faults };
}

function headingsInOrder(file: TaggedFile): Verdict {
  let level = 0;
  return each(ofRole(file, /^H[1-6]$/u), ({ role }) => {
    const before = level;
    level = Number(role.slice(1));
    return level > before + 1 && `${role} after H${before}`;
  });
}

function evenRows(file: TaggedFile): Verdict {
  return each(ofRole(file, /^Table$/u), (table) => {
    const span = (cell: Element, name: string): number => {
      const value = attribute(cell, name);
      return value instanceof PDFNumber ? value.asNumber() : 1;
    };
    const rows = table.kids.flatMap((kid) => (kid.role === 'TR' ? [kid] : kid.kids));
    const widths = new Set(rows.map((row) => row.kids.reduce((sum, cell) => sum + span(cell, 'ColSpan'), 0)));
    const isTall = rows.some((row) => row.kids.some((cell) => span(cell, 'RowSpan') > 1));
    return !isTall && widths.size > 1 && `rows of ${[...widths].join(' and ')} cells`;
  });
}

interface Font {
  readonly font: PDFDict;
  readonly cid: PDFDict;
  readonly program?: PDFRawStream;
}

/** Every font; one that is not of many signs has no `cid` and is a fault of 7.21.3. */
function fontsOf(file: TaggedFile): readonly Font[] {
  return file
    .ofType('Font')
    .filter((font) => !/^CIDFont/u.test(nameIn(font, 'Subtype')))
    .map((font) => {
      const [given] = listIn(font, 'DescendantFonts');
      const cid = given ? file.pdf.context.lookup(given, PDFDict) : font;
      const descriptor = dictIn(cid, 'FontDescriptor');
      const program = descriptor?.lookup(key('FontFile2')) ?? descriptor?.lookup(key('FontFile3'));
      return { font, cid, ...(program instanceof PDFRawStream ? { program } : {}) };
    });
}

/** Widths by glyph (ISO 32000-1, 9.7.4.3); what has none stands for a glyph that is not used. */
function widthsOf(cid: PDFDict): ReadonlyMap<number, number> {
  const widths = new Map<number, number>();
  const given = listIn(cid, 'W').map((part) => cid.context.lookup(part));
  for (let at = 0; at < given.length; ) {
    const [from, next, last] = [given[at], given[at + 1], given[at + 2]];
    const first = (from as PDFNumber).asNumber();
    if (next instanceof PDFArray) {
      next.asArray().forEach((width, i) => {
        widths.set(first + i, (width as PDFNumber).asNumber());
      });
      at += 2;
    } else {
      for (let glyph = first; glyph <= (next as PDFNumber).asNumber(); glyph++) widths.set(glyph, (last as PDFNumber).asNumber());
      at += 3;
    }
  }
  return new Map([...widths].filter(([, width]) => width > 0));
}

interface Program {
  readonly numGlyphs: number;
  readonly unitsPerEm: number;
  readonly advances: readonly number[];
}

function fontProgram(program: PDFRawStream): Program {
  const font = create(Buffer.from(inflateSync(program.contents))) as unknown as {
    numGlyphs: number;
    unitsPerEm: number;
    getGlyph(glyph: number): { advanceWidth: number };
  };
  const advances = Array.from({ length: font.numGlyphs }, (_, glyph) => font.getGlyph(glyph).advanceWidth);
  return { numGlyphs: font.numGlyphs, unitsPerEm: font.unitsPerEm, advances };
}

/** Text by glyph, of the font's own map (ISO 32000-1, 9.10.3). */
function unicodeOf(font: PDFDict): ReadonlyMap<number, string> {
  const given = font.lookup(key('ToUnicode'));
  const map = new Map<number, string>();
  if (!(given instanceof PDFRawStream)) return map;
  const text = given.dict.has(key('Filter'))
    ? Buffer.from(inflateSync(given.contents)).toString('latin1')
    : Buffer.from(given.contents).toString('latin1');
  const units = (hex: string): string => Buffer.from(hex, 'hex').swap16().toString('utf16le');
  for (const [, body] of text.matchAll(/beginbfchar([\s\S]*?)endbfchar/gu)) {
    for (const [, from, to] of (body as string).matchAll(/<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]+)>/gu))
      map.set(Number.parseInt(from as string, 16), units(to as string));
  }
  for (const [, body] of text.matchAll(/beginbfrange([\s\S]*?)endbfrange/gu)) {
    for (const [, from, last, to] of (body as string).matchAll(/<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]+)>/gu)) {
      const first = Number.parseInt(from as string, 16);
      for (let glyph = first; glyph <= Number.parseInt(last as string, 16); glyph++)
        map.set(glyph, String.fromCodePoint(Number.parseInt(to as string, 16) + glyph - first));
    }
  }
  return map;
}
