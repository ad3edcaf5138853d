import { isMap } from 'yaml';
import { readDocument } from '../../source/document.js';
import { nearest } from '../../source/nearest.js';
import { COLUMNS_FILE } from '../../store/layout.js';
import { UserError } from '../../user-error.js';
import { setValue } from '../change.js';
import { columnFor, columnsOf } from '../columns.js';
import { LAYERS_KEY } from '../kept-keys.js';
import { Splices, wireRootOf } from '../splices.js';
import { isData } from '../yaml-text.js';

/** What the pieces of a layer become. */
export type DrawnKind = 'member' | 'panel' | 'opening';
export const DRAWN_KINDS: readonly DrawnKind[] = ['member', 'panel', 'opening'];

/** A layer’s kind, and the fields that all its records have; `skip`: not read. */
export type LayerMeaning = { readonly kind: DrawnKind; readonly fields: Readonly<Record<string, string>> } | 'skip';

const EXAMPLE = "--layer 'FLOOR=member, section=RT2x2x1/8, alloy=6061-T6' or --layer 'NOTES=skip'";

/** `FLOOR=member, section=RT2x2x1/8, alloy=6061-T6`. Throws {@link UserError} with what is wrong in it. */
export function saidLayers(given: readonly string[]): ReadonlyMap<string, LayerMeaning> {
  return new Map(
    given.map((one) => {
      const at = one.indexOf('=');
      if (at < 1) throw new UserError(`Found --layer \`${one}\`, expected a layer and what its pieces are, as ${EXAMPLE}`);
      return [one.slice(0, at).trim(), meaningOf(one.slice(at + 1), `--layer \`${one}\``)] as const;
    }),
  );
}

function meaningOf(text: string, where: string): LayerMeaning {
  const [word = '', ...pairs] = text.split(/\s*,\s*/u).map((part) => part.trim());
  if (word === 'skip') return 'skip';
  const kind = DRAWN_KINDS.find((one) => one === word || `${one}s` === word);
  if (!kind) throw new UserError(`Found \`${word}\` in ${where}, expected ${DRAWN_KINDS.join(', ')} or skip, as ${EXAMPLE}`);
  const fields = pairs.map((pair) => {
    const [, key = '', value = ''] = /^([^=:]+)[=:]\s*(.+)$/u.exec(pair) ?? [];
    if (columnFor(kind, key.trim()) !== undefined) return [key.trim(), value.trim()] as const;
    const [close] = nearest(
      key,
      columnsOf(kind).map((column) => column.key),
      1,
    );
    throw new UserError(
      `Found \`${pair}\` in ${where}, expected a field of a ${kind}${close ? ` as \`${close}\`` : ''} and its value, as ${EXAMPLE}`,
    );
  });
  return { kind, fields: Object.fromEntries(fields) };
}

/** The layers that the shop keeps in import.yaml, below the key of theirs: `FLOOR: member, section=RT2x2x1/8`. */
export function keptLayers(text: string | undefined): ReadonlyMap<string, LayerMeaning> {
  const data: unknown = text === undefined ? undefined : readDocument(COLUMNS_FILE, text).data;
  const layers = isData(data) ? data[LAYERS_KEY] : undefined;
  if (!isData(layers)) return new Map();
  return new Map(
    Object.entries(layers).map(([layer, meaning]) => [
      layer,
      meaningOf(String(meaning ?? 'skip'), `${COLUMNS_FILE}, layer ${layer}`),
    ]),
  );
}

const textOf = (meaning: LayerMeaning): string =>
  meaning === 'skip'
    ? 'skip'
    : [meaning.kind, ...Object.entries(meaning.fields).map(([key, value]) => `${key}=${value}`)].join(', ');

/** import.yaml with these layers kept. */
export function withLayers(old: string | null, layers: ReadonlyMap<string, LayerMeaning>): string {
  const start = old ?? '';
  const splices = new Splices(start);
  const root = wireRootOf(COLUMNS_FILE, start);
  const held = isMap(root) ? root.get(LAYERS_KEY, true) : undefined;
  if (isMap(held)) for (const [layer, meaning] of layers) setValue(splices, held, [layer], textOf(meaning));
  else {
    const lines = [...layers].map(([layer, meaning]) => `  ${JSON.stringify(layer)}: ${JSON.stringify(textOf(meaning))}\n`);
    splices.insert(start.length, `# What the pieces on a drawing’s layers become.\n${LAYERS_KEY}:\n${lines.join('')}`);
  }
  return splices.apply();
}
