import { type Circuit, MEDIA, type Medium, type RecordKind, type Run, type Service, type ServiceNode } from '../records/index.js';
import { inModel } from '../records/read-model.js';
import { stemOf } from '../store/layout.js';
import { nodeAt, type OpenFile, type RecordReader } from './records.js';
import type { Register } from './register.js';

export interface ServiceParts {
  readonly services: readonly Service[];
  readonly circuits: readonly Circuit[];
  readonly nodes: readonly ServiceNode[];
  readonly runs: readonly Run[];
}

const PARTS = ['circuits', 'nodes', 'runs', 'units'] as const;

/**
 * Reads services/*.yaml, one service a file. Gives them once every place is known that hangs on something; runs know their whole way
 * once every node is.
 */
export function readServices(
  files: readonly (readonly [string, string])[],
  reader: RecordReader,
  register: Register<RecordKind>,
): () => ServiceParts {
  const read = files.flatMap(([path, text]) => {
    const file = reader.open(path, text, register);
    return file ? [readService(path, file, reader, register)] : [];
  });
  return () => partsOf(read.map((one) => one()));
}

function partsOf(read: readonly Service[]): ServiceParts {
  const nodes = read.flatMap((service) => service.nodes);
  const services = read.map((service) => ({ ...service, runs: withPaths(service.runs, nodes) }));
  return {
    services,
    circuits: services.flatMap((service) => service.circuits),
    nodes,
    runs: services.flatMap((service) => service.runs),
  };
}

function readService(path: string, file: OpenFile, reader: RecordReader, register: Register<RecordKind>): () => Service {
  const id = stemOf(path.slice(path.lastIndexOf('/') + 1)) as string;
  const data = mappingOf(file, path, reader);
  const head = Object.fromEntries(Object.entries(data).filter(([key]) => !(PARTS as readonly string[]).includes(key)));
  const form = reader.form(file, 'service', { data: head, source: file.source, alsoKnown: PARTS });
  const of = { service: id, medium: form?.medium ?? mediumOr(data.medium) };
  const list = <K extends 'circuit' | 'node' | 'run'>(name: string, kind: K) => {
    const records = reader.items(file, () => nodeAt(file, name), data[name], name, kind, register);
    return () => records.flatMap((record) => (reader.lost.has(record.form as object) ? [] : (inModel(kind, record, of) ?? [])));
  };
  const [circuits, nodes, runs] = [list('circuits', 'circuit'), list('nodes', 'node'), list('runs', 'run')];
  const typed = form ? head : {};
  return () => ({
    id,
    name: form?.service ?? id,
    medium: of.medium,
    ...(form?.contents === undefined ? {} : { contents: form.contents }),
    file: path,
    typed,
    circuits: circuits(),
    nodes: nodes(),
    runs: runs(),
  });
}

/** A head with a fault elsewhere still says the medium; one without is told, and read as the one with the most rules. */
const mediumOr = (typed: unknown): Medium => ((MEDIA as readonly unknown[]).includes(typed) ? (typed as Medium) : 'ac');

function mappingOf(file: OpenFile, path: string, reader: RecordReader): Readonly<Record<string, unknown>> {
  const { data } = file.document;
  if (typeof data === 'object' && data !== null && !Array.isArray(data)) return data as Record<string, unknown>;
  if (Array.isArray(data)) {
    const message = `Found a list in ${path}, expected a service as a block of keys: \`service:\`, \`medium:\`, then \`circuits:\`, \`nodes:\` and \`runs:\``;
    reader.tell('format.wrong-value', message, file.source.place());
  }
  return {};
}

/** The whole way of each run, ends included; empty where an end is unknown. */
function withPaths(runs: readonly Run[], nodes: readonly ServiceNode[]): readonly Run[] {
  const places = new Map(nodes.map((node) => [node.id, node.at]));
  return runs.map((run) => {
    const from = places.get(run.from);
    const to = places.get(run.to);
    return from && to ? { ...run, path: [from, ...run.via, to] } : run;
  });
}
