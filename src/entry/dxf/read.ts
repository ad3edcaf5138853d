import type { Vec3 } from '../../geometry/vector.js';
import { UserError } from '../../user-error.js';
import { type DxfGroup, dxfGroups } from './groups.js';

/** A piece of a drawing as it stands there, in the drawing’s own units. */
export interface DxfEntity {
  readonly type: string;
  readonly layer: string;
  readonly line: number;
  /** Corners or ends; of an insert its place. */
  readonly points: readonly Vec3[];
  readonly closed: boolean;
  /** It has arcs between its corners. */
  readonly bulged: boolean;
  /** Points lie in the plane with this normal (the format’s object coordinate system). */
  readonly normal?: Vec3;
  /** Of an insert. */
  readonly block?: string;
  readonly scale?: Vec3;
  readonly turnDeg?: number;
  /** Copies in columns and rows, with their distances. */
  readonly grid?: { readonly columns: number; readonly rows: number; readonly across: number; readonly along: number };
  /** What this program wrote beside it, or attributes of an insert: key → value. */
  readonly said: Readonly<Record<string, string>>;
}

export interface DxfBlock {
  readonly base: Vec3;
  readonly entities: readonly DxfEntity[];
}

export interface DxfDrawing {
  /** `$INSUNITS`; 0 where the drawing does not say. */
  readonly units: number;
  readonly entities: readonly DxfEntity[];
  readonly blocks: ReadonlyMap<string, DxfBlock>;
  /** Kinds of pieces that are left out → how many. */
  readonly others: ReadonlyMap<string, number>;
}

/** The name under which this program’s own words stand in a drawing. */
export const DXF_APP = 'SHELLBOOK';

const MOST_ENTITIES = 400_000;
const MOST_CORNERS = 5000;
const SHAPES: ReadonlySet<string> = new Set(['LINE', 'LWPOLYLINE', 'POLYLINE', '3DFACE', 'INSERT']);
const PARTS: ReadonlySet<string> = new Set(['VERTEX', 'SEQEND', 'ATTRIB']);

/** Reads the lines, polylines, faces and inserts of a DXF drawing. Throws {@link UserError} at its line. */
export function readDxf(name: string, text: string, mostEntities = MOST_ENTITIES): DxfDrawing {
  const reader = new DxfReader(name, mostEntities);
  for (const group of dxfGroups(name, text)) reader.take(group);
  return reader.finish();
}

interface Open {
  type: string;
  line: number;
  groups: DxfGroup[];
}

interface Block {
  base: Vec3;
  entities: DxfEntity[];
}

class DxfReader {
  private section = '';
  private variable = '';
  private units = 0;
  private open: Open | undefined;
  private poly: { head: Open; vertices: Open[]; attributes: Open[] } | undefined;
  private block: { name: string; made: Block } | undefined;
  private readonly entities: DxfEntity[] = [];
  private readonly blocks = new Map<string, DxfBlock>();
  private readonly others = new Map<string, number>();
  private count = 0;
  private ended = false;

  constructor(
    private readonly name: string,
    private readonly most: number,
  ) {}

  take(group: DxfGroup): void {
    // A comment.
    if (group.code === 999) return;
    if (group.code === 0) {
      this.close();
      this.open = { type: group.value.trim().toUpperCase(), line: group.line, groups: [] };
      if (this.open.type === 'EOF') this.ended = true;
      return;
    }
    if (this.section === '' && this.open?.type === 'SECTION' && group.code === 2) this.section = group.value.trim().toUpperCase();
    if (this.section === 'HEADER') this.header(group);
    if (!this.open)
      throw new UserError(
        `${this.name}:${group.line}: Found \`${group.value.slice(0, 30)}\`, expected a DXF drawing that begins with 0, SECTION`,
      );
    if (this.open.groups.length > MOST_CORNERS * 8)
      throw this.fault(this.open.line, 'a piece with more values than any has', 'a frame of lines');
    if (this.section === 'ENTITIES' || this.section === 'BLOCKS') this.open.groups.push(group);
  }

  finish(): DxfDrawing {
    this.close();
    this.flush();
    if (!this.ended && this.entities.length === 0 && this.section === '')
      throw new UserError(`${this.name} has no section of a DXF drawing, expected a drawing saved as DXF`);
    if (!this.ended) throw new UserError(`${this.name} ends before its EOF: it was not saved or copied whole`);
    return { units: this.units, entities: this.entities, blocks: this.blocks, others: this.others };
  }

  private header({ code, value }: DxfGroup): void {
    if (code === 9) this.variable = value.trim();
    else if (this.variable === '$INSUNITS' && code === 70) this.units = Number(value) || 0;
  }

  private close(): void {
    const { open } = this;
    this.open = undefined;
    if (!open) return;
    const text = (code: number): string => open.groups.find((group) => group.code === code)?.value.trim() ?? '';
    if (open.type === 'ENDSEC') {
      this.flush();
      this.section = '';
    } else if (this.section === 'BLOCKS' && open.type === 'BLOCK') {
      this.block = { name: text(2), made: { base: this.point(open.groups, 10), entities: [] } };
    } else if (this.section === 'BLOCKS' && open.type === 'ENDBLK') {
      this.flush();
      if (this.block) this.blocks.set(this.block.name, this.block.made);
      this.block = undefined;
    } else if (open.type !== 'SECTION' && (this.section === 'ENTITIES' || this.section === 'BLOCKS')) this.entity(open);
  }

  private entity(open: Open): void {
    if (open.type === 'VERTEX' && this.poly) {
      if (this.poly.vertices.length >= MOST_CORNERS)
        throw this.fault(open.line, `a polyline of more than ${MOST_CORNERS} corners`, 'an outline');
      this.poly.vertices.push(open);
      return;
    }
    if (open.type === 'ATTRIB' && this.poly) {
      this.poly.attributes.push(open);
      return;
    }
    this.flush();
    if (PARTS.has(open.type)) return;
    if (!SHAPES.has(open.type)) {
      this.others.set(open.type, (this.others.get(open.type) ?? 0) + 1);
      return;
    }
    if (++this.count > this.most)
      throw new UserError(
        `${this.name} has more than ${this.most} lines and faces, expected a drawing of one coach: save its frame alone`,
      );
    this.poly = { head: open, vertices: [], attributes: [] };
    const follows = open.type === 'POLYLINE' || (open.type === 'INSERT' && open.groups.some(({ code }) => code === 66));
    if (!follows) this.flush();
  }

  /** A polyline is whole once its corners have followed, an insert once its attributes have. */
  private flush(): void {
    const { poly } = this;
    this.poly = undefined;
    if (!poly) return;
    const made = this.made(poly.head, poly.vertices, poly.attributes);
    if (made) (this.block?.made.entities ?? this.entities).push(made);
  }

  private made(head: Open, vertices: readonly Open[], attributes: readonly Open[]): DxfEntity | undefined {
    const { groups, type, line } = head;
    const number = (code: number): number | undefined => this.number(groups.find((group) => group.code === code));
    const flags = number(70) ?? 0;
    const base = {
      type,
      line,
      layer: groups.find(({ code }) => code === 8)?.value.trim() ?? '0',
      said: { ...saidIn(groups), ...attributesIn(attributes) },
    };
    const normal = groups.some(({ code }) => code === 210) ? { normal: this.point(groups, 210) } : {};
    if (type === 'LINE')
      return { ...base, points: [this.point(groups, 10), this.point(groups, 11)], closed: false, bulged: false };
    if (type === '3DFACE') {
      const corners = [10, 11, 12, 13]
        .filter((code) => groups.some((group) => group.code === code))
        .map((code) => this.point(groups, code));
      return { ...base, points: corners, closed: true, bulged: false };
    }
    if (type === 'LWPOLYLINE') {
      const points = this.flatPoints(groups, number(38) ?? 0);
      return {
        ...base,
        ...normal,
        points,
        closed: (flags & 1) === 1,
        bulged: groups.some(({ code, value }) => code === 42 && Number(value) !== 0),
      };
    }
    if (type === 'POLYLINE') {
      // A mesh is no outline.
      if ((flags & 80) !== 0) {
        this.others.set('MESH', (this.others.get('MESH') ?? 0) + 1);
        return undefined;
      }
      const isFlat = (flags & 8) === 0;
      const height = this.point(groups, 10)[2];
      const points = vertices.map((vertex) => {
        const at = this.point(vertex.groups, 10);
        return isFlat ? ([at[0], at[1], height] as const) : at;
      });
      const bulged = vertices.some((vertex) => vertex.groups.some(({ code, value }) => code === 42 && Number(value) !== 0));
      return { ...base, ...(isFlat ? normal : {}), points, closed: (flags & 1) === 1, bulged };
    }
    const grid = { columns: number(70) ?? 1, rows: number(71) ?? 1, across: number(44) ?? 0, along: number(45) ?? 0 };
    return {
      ...base,
      ...normal,
      points: [this.point(groups, 10)],
      closed: false,
      bulged: false,
      block: groups.find(({ code }) => code === 2)?.value.trim() ?? '',
      scale: [number(41) ?? 1, number(42) ?? 1, number(43) ?? 1],
      turnDeg: number(50) ?? 0,
      ...(grid.columns > 1 || grid.rows > 1 ? { grid } : {}),
    };
  }

  private flatPoints(groups: readonly DxfGroup[], height: number): readonly Vec3[] {
    const points: Vec3[] = [];
    let x: number | undefined;
    for (const group of groups) {
      if (group.code === 10) x = this.number(group);
      if (group.code === 20 && x !== undefined) {
        points.push([x, this.number(group) as number, height]);
        x = undefined;
      }
    }
    return points;
  }

  private point(groups: readonly DxfGroup[], code: number): Vec3 {
    const [x, y, z] = [code, code + 10, code + 20].map((one) => this.number(groups.find((group) => group.code === one)) ?? 0);
    return [x as number, y as number, z as number];
  }

  /** Above this nothing of a coach lies, in whatever unit. */
  private number(group: DxfGroup | undefined): number | undefined {
    if (group === undefined) return undefined;
    const value = group.value.trim() === '' ? Number.NaN : Number(group.value);
    if (Number.isFinite(value) && Math.abs(value) < 1e9) return value;
    throw this.fault(group.line, `\`${group.value.trim().slice(0, 30)}\``, 'a number');
  }

  private fault(line: number, found: string, expected: string): UserError {
    return new UserError(`${this.name}:${line}: Found ${found}, expected ${expected}. Nothing was read.`);
  }
}

/** `id=FL-1`, `section=RT2x2x1/8`: this program’s own words, behind its name (group 1001). */
function saidIn(groups: readonly DxfGroup[]): Readonly<Record<string, string>> {
  const start = groups.findIndex(({ code, value }) => code === 1001 && value.trim() === DXF_APP);
  const said: [string, string][] = [];
  for (const { code, value } of start < 0 ? [] : groups.slice(start + 1)) {
    if (code === 1001) break;
    const at = value.indexOf('=');
    if (code === 1000 && at > 0) said.push([value.slice(0, at), spelled(value.slice(at + 1))]);
  }
  return Object.fromEntries(said);
}

/** Signs that stand by their number: `\\U+00D6`. */
const spelled = (text: string): string =>
  text.replace(/\\U\+([0-9A-F]{4})/giu, (_, code: string) => String.fromCharCode(Number.parseInt(code, 16)));

/** An insert’s attribute called MARK, ID or TAG is the piece’s mark. */
function attributesIn(attributes: readonly Open[]): Readonly<Record<string, string>> {
  for (const { groups } of attributes) {
    const tag =
      groups
        .find(({ code }) => code === 2)
        ?.value.trim()
        .toUpperCase() ?? '';
    const value = groups.find(({ code }) => code === 1)?.value.trim() ?? '';
    if (['MARK', 'ID', 'TAG', 'NO'].includes(tag) && value !== '') return { id: value };
  }
  return {};
}
