import type { Vec3 } from '../geometry/vector.js';
import type { Bay, Chassis, ConditionRead, HeadKind, LoadingCondition, RecordKind, Seat, Tank } from '../records/index.js';
import type { Form } from '../records/kinds.js';
import { inModel, partInModel } from '../records/read-model.js';
import { found } from '../source/shown.js';
import type { Path, Source } from '../source/source.js';
import { readCondition, type Vehicle } from './conditions.js';
import { checkWhole, nodeAt, type OpenFile, type RecordReader } from './records.js';
import type { Register } from './register.js';

type Mapping = Readonly<Record<string, unknown>>;

/** What shell.yaml holds. Each part is read on its own, so that one fault loses one part. */
export interface LoadedHead {
  readonly form: Form<'shell'> | undefined;
  readonly chassis: Chassis;
  readonly tanks: readonly Tank[];
  readonly seats: readonly Seat[];
  readonly bays: readonly Bay[];
  readonly conditions: readonly LoadingCondition[];
}

const PARTS = ['chassis', 'tanks', 'seats', 'bays', 'conditions', 'datum', 'units'] as const;
const CHASSIS_PARTS = ['axles', 'bare'] as const;

/**
 * Reads shell.yaml. Moves the reader's datum first: every place read after that is in the standard datum. Gives the head once every
 * place is known that hangs on something.
 */
export function readHead(file: OpenFile, id: string, reader: RecordReader, register: Register<RecordKind>): () => LoadedHead {
  const data = mappingOf(file.document.data, '', file, reader);
  const moved = data.datum === undefined || data.datum === null ? file : moveDatum(file, id, data.datum, reader);
  const { source } = moved;
  const form = reader.form(moved, 'shell', { id, data: without(data, PARTS), source, alsoKnown: PARTS });
  const list = <K extends HeadKind>(name: string, kind: K) => {
    const records = reader.items(moved, () => nodeAt(moved, name), data[name], name, kind, register);
    for (const record of records) checkWhole(kind, record, reader);
    return () => records.flatMap((record) => (reader.lost.has(record.form as object) ? [] : (inModel(kind, record) ?? [])));
  };
  const [tanks, seats, bays] = [list('tanks', 'tank'), list('seats', 'seat'), list('bays', 'bay')];
  const chassis = readChassis(moved, id, data.chassis, reader, register);
  const conditions = readConditions(moved, id, data.conditions, reader);
  return () => {
    const vehicle: Vehicle = { tanks: tanks(), register, say: reader.say };
    return {
      form,
      chassis: chassis(vehicle),
      tanks: vehicle.tanks,
      seats: seats(),
      bays: bays(),
      conditions: conditions(vehicle),
    };
  };
}

function moveDatum(file: OpenFile, id: string, data: unknown, reader: RecordReader): OpenFile {
  const form = reader.form(file, 'datum', { id, data, source: file.source, path: ['datum'] });
  if (form) reader.moveDatum(form.origin as Vec3);
  return { ...file, schemas: reader.schemasFor(file.units) };
}

function readChassis(
  file: OpenFile,
  id: string,
  typed: unknown,
  reader: RecordReader,
  register: Register<RecordKind>,
): (vehicle: Vehicle) => Chassis {
  const data = mappingOf(typed, 'chassis', file, reader);
  const { source } = file;
  const form = reader.form(file, 'chassis', {
    id,
    data: without(data, CHASSIS_PARTS),
    source,
    path: ['chassis'],
    alsoKnown: CHASSIS_PARTS,
  });
  const axles = reader.items(file, () => nodeAt(file, 'chassis', 'axles'), data.axles, 'axles', 'axle', register);
  const sorted = [...axles].sort((a, b) => a.form.x - b.form.x);
  const isTyped = data.bare !== undefined && data.bare !== null;
  const path = ['chassis', 'bare'];
  const bare = isTyped ? reader.form(file, 'bare', { id, data: data.bare, source, path }) : undefined;
  return (vehicle) => ({
    ...partInModel('chassis', form ?? {}, { id, path: ['chassis'] }),
    axles: sorted.flatMap((record, i) => inModel('axle', record, { isFirst: i === 0 }) ?? []),
    ...(bare && !reader.lost.has(bare)
      ? { bare: partInModel('bare', bare, { id, path, condition: conditionsOf(id, source, vehicle) }) }
      : {}),
  });
}

/** How the words of a condition are read that stands in this record. */
export const conditionsOf =
  (id: string, source: Source, vehicle: Vehicle) =>
  (read: ConditionRead, path: Path): unknown =>
    readCondition(read, { id, source, path }, vehicle);

function readConditions(
  file: OpenFile,
  id: string,
  typed: unknown,
  reader: RecordReader,
): (vehicle: Vehicle) => readonly LoadingCondition[] {
  if (typed === undefined || typed === null) return () => [];
  const { source } = file;
  if (!Array.isArray(typed)) {
    const message = `Found ${found(typed)} for \`conditions\`, expected a list, each as \`- {name: …, condition: {…}}\``;
    reader.tell('format.wrong-value', message, source.place('conditions'), [id]);
    return () => [];
  }
  const forms = typed.map((data: unknown, i) =>
    reader.form(file, 'loading condition', { id, data, source, path: ['conditions', i] }),
  );
  return (vehicle) =>
    forms.flatMap((form, i) => {
      const given = { id, path: ['conditions', i], condition: conditionsOf(id, source, vehicle) };
      return form && !reader.lost.has(form) ? [partInModel('loading condition', form, given)] : [];
    });
}

function mappingOf(data: unknown, name: string, file: OpenFile, reader: RecordReader): Mapping {
  if (data === undefined || data === null) return {};
  if (typeof data === 'object' && !Array.isArray(data)) return data as Mapping;
  const path = name === '' ? [] : [name];
  const where = name === '' ? `in ${file.document.file}` : `for \`${name}\``;
  reader.tell('format.wrong-value', `Found ${found(data)} ${where}, expected a block of keys`, file.source.place(...path));
  return {};
}

const without = (data: Mapping, keys: readonly string[]): Mapping =>
  Object.fromEntries(Object.entries(data).filter(([key]) => !keys.includes(key)));
