/** What the file says of itself in XMP (ISO 16684-1); the information dictionary says the same. */
export interface FileWords {
  readonly title: string;
  readonly author?: string;
  readonly language: string;
  readonly creator: string;
  readonly producer: string;
  /** UTC, seconds: `2026-06-30T10:00:00Z`. */
  readonly date: string;
  /** Whether the file keeps to PDF/A-3 (ISO 19005-3). */
  readonly archival: boolean;
  /** Whether it keeps to PDF/UA-1 (ISO 14289-1) as far as a program can tell, and so to level A of PDF/A-3. */
  readonly accessible: boolean;
}

/** `2026-06-30T12:00:00+02:00` → `2026-06-30T10:00:00Z`; the first day of 2000 where it is no date. */
export function utcSeconds(date: string): string {
  const at = new Date(date);
  return Number.isNaN(at.getTime()) ? '2000-01-01T00:00:00Z' : `${at.toISOString().slice(0, 19)}Z`;
}

/** `2026-06-30T10:00:00Z` → `D:20260630100000Z` (ISO 32000-2, 7.9.4). */
export const pdfDate = (date: string): string => `D:${date.replace(/[-:T]/gu, '')}`;

/**
 * The XMP packet. It claims what `tests/book/clauses.ts` holds every edition to, clause by clause; whether a drawing is described well
 * is for a reader to judge.
 */
export function xmp({ title, author, language, creator, producer, date, archival, accessible }: FileWords): string {
  const level = archival
    ? `\n   <pdfaid:part>3</pdfaid:part>\n   <pdfaid:conformance>${accessible ? 'A' : 'B'}</pdfaid:conformance>`
    : '';
  const reader = accessible ? `\n   <pdfuaid:part>1</pdfuaid:part>${UA_SCHEMA}` : '';
  const named = author === undefined ? '' : `\n   <dc:creator><rdf:Seq><rdf:li>${xml(author)}</rdf:li></rdf:Seq></dc:creator>`;
  return `<?xpacket begin="\uFEFF" id="W5M0MpCehiHzreSzNTczkc9d"?>
<x:xmpmeta xmlns:x="adobe:ns:meta/">
 <rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
  <rdf:Description rdf:about=""
    xmlns:dc="http://purl.org/dc/elements/1.1/"
    xmlns:xmp="http://ns.adobe.com/xap/1.0/"
    xmlns:pdf="http://ns.adobe.com/pdf/1.3/"
    xmlns:pdfaid="http://www.aiim.org/pdfa/ns/id/"
    xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/"
    xmlns:pdfaExtension="http://www.aiim.org/pdfa/ns/extension/"
    xmlns:pdfaSchema="http://www.aiim.org/pdfa/ns/schema#"
    xmlns:pdfaProperty="http://www.aiim.org/pdfa/ns/property#">
   <dc:format>application/pdf</dc:format>
   <dc:title><rdf:Alt><rdf:li xml:lang="x-default">${xml(title)}</rdf:li></rdf:Alt></dc:title>${named}
   <dc:language><rdf:Bag><rdf:li>${xml(language)}</rdf:li></rdf:Bag></dc:language>
   <xmp:CreatorTool>${xml(creator)}</xmp:CreatorTool>
   <xmp:CreateDate>${date}</xmp:CreateDate>
   <xmp:ModifyDate>${date}</xmp:ModifyDate>
   <xmp:MetadataDate>${date}</xmp:MetadataDate>
   <pdf:Producer>${xml(producer)}</pdf:Producer>${level}${reader}
  </rdf:Description>
 </rdf:RDF>
</x:xmpmeta>
<?xpacket end="r"?>`;
}

/** PDF/A wants every schema described that it does not itself define (ISO 19005-3, 6.6.2.3.3). */
const UA_SCHEMA = `
   <pdfaExtension:schemas><rdf:Bag><rdf:li rdf:parseType="Resource">
    <pdfaSchema:schema>PDF/UA identification</pdfaSchema:schema>
    <pdfaSchema:namespaceURI>http://www.aiim.org/pdfua/ns/id/</pdfaSchema:namespaceURI>
    <pdfaSchema:prefix>pdfuaid</pdfaSchema:prefix>
    <pdfaSchema:property><rdf:Seq><rdf:li rdf:parseType="Resource">
     <pdfaProperty:name>part</pdfaProperty:name>
     <pdfaProperty:valueType>Integer</pdfaProperty:valueType>
     <pdfaProperty:category>internal</pdfaProperty:category>
     <pdfaProperty:description>Part of ISO 14289 that the file keeps to</pdfaProperty:description>
    </rdf:li></rdf:Seq></pdfaSchema:property>
   </rdf:li></rdf:Bag></pdfaExtension:schemas>`;

/** Text for XML: what it cannot hold at all (controls, lone surrogates) is left out. */
const xml = (text: string): string =>
  text
    .replace(/\p{Cs}/gu, '\uFFFD')
    .replace(/[\p{Cc}\uFFFE\uFFFF]/gu, (sign) => (/[\t\n\r]/u.test(sign) ? ' ' : ''))
    .replace(/[<>&"]/gu, (sign) => `&#${sign.charCodeAt(0)};`);
