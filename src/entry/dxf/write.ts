import type { Vec3 } from '../../geometry/vector.js';
import type { Shell } from '../../records/index.js';
import { cornersOfOpening } from './pieces.js';
import { DXF_APP } from './read.js';

/** One piece to be drawn: a straight line, or a line through several places. */
interface Drawn {
  readonly layer: string;
  readonly points: readonly Vec3[];
  readonly closed: boolean;
  readonly said: Readonly<Record<string, string | number | undefined>>;
}

const COLOURS: Readonly<Record<string, number>> = { MEMBERS: 5, PLATES: 4, PANELS: 3, OPENINGS: 6, RUNS: 1 };

/**
 * Members, plates, panels, openings and runs of a shell as a DXF drawing (release 12, text), in millimetres of the standard datum: x
 * rearward, y to the right, z up. Each bears its id in the extended data, so that it is known when it comes back.
 */
export function dxfOf(shell: Shell): string {
  const drawn = [...members(shell), ...panels(shell), ...openings(shell), ...runs(shell)];
  const layers = [...new Set(drawn.map(({ layer }) => layer))].sort();
  const out: string[] = [];
  const put = (code: number, value: string | number): void => void out.push(String(code), String(value));
  put(999, `Shell ${plainText(shell.id)}, millimetres: x rearward from the front axle, y to the right, z up from the frame rail`);
  header(put, drawn);
  tables(put, layers);
  put(0, 'SECTION');
  put(2, 'ENTITIES');
  for (const one of drawn) piece(put, one);
  put(0, 'ENDSEC');
  put(0, 'EOF');
  return `${out.join('\r\n')}\r\n`;
}

type Put = (code: number, value: string | number) => void;

function header(put: Put, drawn: readonly Drawn[]): void {
  const low = [0, 1, 2].map((axis) =>
    Math.min(0, ...drawn.flatMap(({ points }) => points.map((point) => point[axis] as number))),
  );
  const high = [0, 1, 2].map((axis) =>
    Math.max(0, ...drawn.flatMap(({ points }) => points.map((point) => point[axis] as number))),
  );
  put(0, 'SECTION');
  put(2, 'HEADER');
  put(9, '$ACADVER');
  put(1, 'AC1009');
  put(9, '$INSUNITS');
  put(70, 4);
  for (const [name, corner] of [
    ['$EXTMIN', low],
    ['$EXTMAX', high],
  ] as const) {
    put(9, name);
    for (const [i, one] of corner.entries()) put(10 * (i + 1), number(one));
  }
  put(0, 'ENDSEC');
}

function tables(put: Put, layers: readonly string[]): void {
  put(0, 'SECTION');
  put(2, 'TABLES');
  const table = (name: string, count: number, rows: () => void): void => {
    put(0, 'TABLE');
    put(2, name);
    put(70, count);
    rows();
    put(0, 'ENDTAB');
  };
  table('LTYPE', 1, () => {
    for (const [code, value] of [
      [0, 'LTYPE'],
      [2, 'CONTINUOUS'],
      [70, 0],
      [3, 'Solid line'],
      [72, 65],
      [73, 0],
      [40, 0],
    ] as const)
      put(code, value);
  });
  table('LAYER', layers.length + 1, () => {
    for (const layer of ['0', ...layers]) {
      put(0, 'LAYER');
      put(2, layer);
      put(70, 0);
      put(62, COLOURS[layer.split('_')[0] as string] ?? 7);
      put(6, 'CONTINUOUS');
    }
  });
  table('APPID', 1, () => {
    put(0, 'APPID');
    put(2, DXF_APP);
    put(70, 0);
  });
  put(0, 'ENDSEC');
}

function piece(put: Put, { layer, points, closed, said }: Drawn): void {
  const place = (point: Vec3, first = 10): void => {
    for (const [i, one] of point.entries()) put(first + 10 * i, number(one));
  };
  const [a, b] = points;
  if (!closed && points.length === 2 && a && b) {
    put(0, 'LINE');
    put(8, layer);
    place(a);
    place(b, 11);
    words(put, said);
    return;
  }
  put(0, 'POLYLINE');
  put(8, layer);
  put(66, 1);
  place([0, 0, 0]);
  // 8: a line in space; 1: closed.
  put(70, closed ? 9 : 8);
  words(put, said);
  for (const point of points) {
    put(0, 'VERTEX');
    put(8, layer);
    place(point);
    put(70, 32);
  }
  put(0, 'SEQEND');
  put(8, layer);
}

/** Extended data takes 255 signs a string. */
function words(put: Put, said: Drawn['said']): void {
  put(1001, DXF_APP);
  for (const [key, value] of Object.entries(said)) if (value !== undefined) put(1000, plainText(`${key}=${value}`).slice(0, 255));
}

/** Signs beyond ASCII by their number, as the format has it. */
const plainText = (text: string): string =>
  text
    .replace(/\p{Cc}/gu, ' ')
    .replace(/[^ -~]/gu, (sign) => `\\U+${(sign.codePointAt(0) as number).toString(16).toUpperCase().padStart(4, '0')}`);

const number = (value: number): string => String(Number(value.toFixed(4)));
const mm = (value: number | undefined): string | undefined => (value === undefined ? undefined : `${number(value)} mm`);

/** In release 12 names of layers are letters, digits, `$`, `-` and `_`. */
const layerName = (...words: readonly string[]): string =>
  words
    .map((word) => word.toUpperCase().replace(/[^A-Z0-9$-]+/gu, '-'))
    .join('_')
    .slice(0, 31);

function members({ members: all }: Shell): readonly Drawn[] {
  return all.map(({ id, part, alloy, stage, shape }) => {
    const said = { id, is: 'member', part: part === id ? undefined : part, alloy, stage };
    if (shape.kind === 'plate')
      return {
        layer: 'PLATES',
        points: shape.outline,
        closed: true,
        said: { ...said, 'plate.thickness': mm(shape.thicknessMm) },
      };
    const roll = shape.rollDeg === 0 ? undefined : `${shape.rollDeg} deg`;
    const points = [shape.from, ...(shape.bends ?? []).map(({ at }) => at), shape.to];
    return { layer: layerName('MEMBERS', shape.section), points, closed: false, said: { ...said, section: shape.section, roll } };
  });
}

const panels = ({ panels: all }: Shell): readonly Drawn[] =>
  all.map(({ id, panelKind, alloy, thicknessMm, stage, of, outline }) => ({
    layer: layerName('PANELS', panelKind),
    points: outline,
    closed: true,
    said: { id, is: 'panel', kind: panelKind, alloy, thickness: mm(thicknessMm), stage, of },
  }));

const openings = ({ openings: all }: Shell): readonly Drawn[] =>
  all.flatMap((opening) => {
    const points = cornersOfOpening(opening);
    const { id, openingKind, wall, widthMm, heightMm } = opening;
    const said = { id, is: 'opening', kind: openingKind, wall, width: mm(widthMm), height: mm(heightMm) };
    return points ? [{ layer: 'OPENINGS', points, closed: true, said }] : [];
  });

const runs = ({ runs: all }: Shell): readonly Drawn[] =>
  all.flatMap(({ id, medium, path }) =>
    path.length < 2 ? [] : [{ layer: layerName('RUNS', medium), points: path, closed: false, said: { id, is: 'run' } }],
  );
