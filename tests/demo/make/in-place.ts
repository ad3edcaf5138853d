import { isMap, isScalar, isSeq, parseDocument, type YAMLMap } from 'yaml';

/**
 * The text of a list of records with one key of each record set to what `given` gives. Everything else stays byte for byte; a record
 * for which it gives undefined stays whole. A key that is missing goes to the end of its record.
 */
export function setInRecords(
  text: string,
  key: string,
  given: (typed: Readonly<Record<string, unknown>>) => string | undefined,
): string {
  const contents: unknown = parseDocument(text).contents;
  const records = isSeq(contents) ? contents.items.filter((one): one is YAMLMap => isMap(one)) : [];
  return records.reduceRight((now, record) => {
    const value = given(record.toJSON());
    if (value === undefined) return now;
    const old = record.get(key, true);
    if (isScalar(old) && old.range) return now.slice(0, old.range[0]) + value + now.slice(old.range[1]);
    const end = record.range?.[1] ?? now.length;
    if (record.flow) return `${now.slice(0, end - 1)},\n   ${key}: ${value}${now.slice(end - 1)}`;
    return `${now.slice(0, end).trimEnd()}\n  ${key}: ${value}${now.slice(now.slice(0, end).trimEnd().length)}`;
  }, text);
}
