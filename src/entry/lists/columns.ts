import type { Path } from '../../source/source.js';
import { columnFor, type EntryColumn } from '../columns.js';

/** One sheet for all wires, or for all pipes: a row makes and changes a circuit, a run and the nodes at its ends. */
export type ListWord = 'wire' | 'pipe';

/** Where the cell of a list goes: to the record of its circuit, its run, or an end; `carried`: what the run is made of, with the circuit where all its runs have it. */
export type ListPart = 'row' | 'circuit' | 'run' | 'carried' | 'from' | 'to';

/** A column of a list; its path within a row is its own key. */
export interface ListColumn extends EntryColumn {
  readonly part: ListPart;
  /** Within the record of its part. */
  readonly target: Path;
  /** What a bare number is, where the head does not say. */
  readonly unit?: string;
}

export interface ListForm {
  readonly columns: readonly ListColumn[];
  readonly words: ReadonlyMap<string, string>;
}

type Row = readonly [key: string, part: ListPart, path: string, called: string, more?: { help?: string; unit?: string }];

const RECORD = { row: 'run', circuit: 'circuit', run: 'run', carried: 'circuit', from: 'node', to: 'node' } as const;

const SHARED: readonly Row[] = [
  ['run', 'row', 'id', 'runno segment segmentno', { help: 'The run’s own id, where it has one beside its mark' }],
  ['circuit', 'row', 'id', 'circuitno ckt cktno circuitid', { help: 'The circuit, where its number is not the mark' }],
  ['service', 'row', 'id', 'system medium acdc file', { help: 'The service: its file, its name or what runs in it' }],
  ['name', 'circuit', 'name', 'description feeds function purpose use circuitname'],
  ['from_name', 'from', 'name', 'fromdescription'],
  ['to_name', 'to', 'name', 'todescription'],
  ['from_kind', 'from', 'kind', 'fromtype'],
  ['to_kind', 'to', 'kind', 'totype'],
  ['from_role', 'from', 'role', ''],
  ['to_role', 'to', 'role', ''],
  ['from_side', 'run', 'from_side', ''],
  ['to_side', 'run', 'to_side', ''],
  ['from_at', 'from', 'at', 'fromplace fromlocation fromposition'],
  ['to_at', 'to', 'at', 'toplace tolocation toposition'],
  ['colour', 'carried', 'colour', 'color colourcode colorcode wirecolor wirecolour insulationcolor'],
  ['marking', 'carried', 'marking', 'label marker wirelabel print'],
  ['length', 'run', 'installed_length', 'installedlength len runlength wirelength lg cutlength'],
  ['via', 'run', 'via', 'waypoints'],
  ['zones', 'run', 'zones', 'zone route routing'],
  ['supports', 'run', 'supports', 'supportspacing clips'],
  ['tolerance', 'run', 'tolerance', ''],
  ['stage', 'run', 'stage', 'phase'],
  ['date', 'run', 'date', 'installed installedon'],
  ['by', 'run', 'by', 'installedby who'],
  ['note', 'run', 'note', 'notes remarks remark comment comments'],
];

/** The first columns of either list; `own`: its further words for a mark, and for what a line begins and ends at. */
const leading = (
  own: { readonly mark: string; readonly ends: readonly string[]; readonly help: string },
  end = (lead: string): string => own.ends.map((one) => `${lead}${one}`).join(' '),
): readonly Row[] => [
  ['mark', 'row', 'id', `${own.mark} no number id tag item line mark markno`, { help: own.help }],
  ['from', 'row', 'id', `fromnode source origin start fromdevice ${end('from')} fromend`],
  ['to', 'row', 'id', `tonode destination dest end todevice ${end('to')} toend`],
];
const PROTECTION: Row = ['protection', 'circuit', 'protection.kind', 'protectiontype protectedby protectionkind'];

const WIRES: readonly Row[] = [
  ...leading({
    mark: 'wire wireno wirenumber wireid cable cableno',
    ends: ['panel', 'terminal'],
    help: 'The wire’s number: once seen it is the same circuit',
  }),
  ['awg', 'carried', 'conductor.awg', 'gauge wiregauge wiresize size ga gage wiregage awgno'],
  ['area', 'carried', 'conductor.area', 'mm2 sqmm crosssection', { unit: 'mm2' }],
  ['conductors', 'carried', 'conductor.conductors', 'cores noofconductors wires strands'],
  ['insulation', 'carried', 'conductor.rating', 'insulationrating temp temprating temperature insulationtemp', { unit: 'C' }],
  ['type', 'carried', 'conductor.type', 'wiretype cabletype'],
  ['material', 'carried', 'conductor.material', ''],
  [
    'fuse',
    'circuit',
    'protection.rating',
    'breaker cb fusesize fuserating breakersize breakerrating ocp ocpd overcurrent',
    { unit: 'A' },
  ],
  ['protection', 'circuit', 'protection.kind', 'fusetype protectiontype protectedby protectionkind'],
  [
    'fuse_at',
    'circuit',
    'protection.at',
    'fuselocation fusepanel fusein breakerat breakerpanel breakerlocation protectionat fuseblock',
  ],
  ['voltage', 'circuit', 'voltage', 'volts volt v systemvoltage', { unit: 'V' }],
  ['load', 'circuit', 'load', 'amps amp a current watts draw loadamps', { unit: 'A' }],
];

const PIPES: readonly Row[] = [
  ...leading({
    mark: 'pipe pipeno pipenumber line lineno hose hoseno tube',
    ends: ['fitting'],
    help: 'The line’s number: once seen it is the same circuit',
  }),
  ['size', 'carried', 'size', 'pipesize hosesize diameter dia od nominalsize nominal'],
  [
    'material',
    'row',
    'id',
    'pipematerial madeof type pipetype',
    { help: 'What the pipe is made of, where the size does not say' },
  ],
  ['pressure', 'carried', 'working_pressure', 'workingpressure maxpressure', {}],
  PROTECTION,
  ['setting', 'circuit', 'protection.rating', 'protectionrating reliefpressure setpressure'],
  ['protection_at', 'circuit', 'protection.at', 'regulator reliefvalve regulatorat protectionlocation'],
];

/** Words of a list that are texts whatever the field behind them: a name of a node, a file. */
const TEXTS: ReadonlySet<string> = new Set([
  'mark',
  'run',
  'circuit',
  'service',
  'from',
  'to',
  'material',
  'fuse_at',
  'protection_at',
]);

const MADE = new Map<ListWord, ListForm>();

/** The three first columns of the list, those of the record, the rest of the list, the rest of every line. */
function made(word: ListWord, own: readonly Row[]): ListForm {
  const known = MADE.get(word) ?? formFrom([...own.slice(0, 3), ...SHARED.slice(0, 3), ...own.slice(3), ...SHARED.slice(3)]);
  MADE.set(word, known);
  return known;
}

function formFrom(rows: readonly Row[]): ListForm {
  const columns = rows.flatMap(columnsFrom);
  const words = new Map<string, string>();
  for (const [key, part, path, called] of rows) {
    for (const word of called.split(' ')) if (word !== '' && !words.has(word)) words.set(word, key);
    if (path === 'at' && (part === 'from' || part === 'to'))
      for (const axis of ['x', 'y', 'z']) words.set(`${part}${axis}`, `${part}_${axis}`);
  }
  return { columns, words };
}

function columnsFrom([key, part, path, , more = {}]: Row): readonly ListColumn[] {
  const inner = columnFor(RECORD[part], path) as EntryColumn;
  const target = inner.path;
  const text = TEXTS.has(key) && (part === 'row' || key.endsWith('_at'));
  // A pipe’s size is a text that may begin with a bare number.
  const form: EntryColumn['form'] = text ? { as: 'text' } : key === 'size' ? { as: 'other' } : inner.form;
  const made: ListColumn = {
    ...inner,
    key,
    path: [key],
    help: more.help ?? inner.help,
    required: key === 'from' || key === 'to',
    form,
    list: text ? false : inner.list,
    part,
    target,
    ...(more.unit === undefined ? {} : { unit: more.unit }),
  };
  if (path !== 'at') return [made];
  const axes = (['x', 'y', 'z'] as const).map((axis, i): ListColumn => {
    const column = columnFor('node', `at.${axis}`) as EntryColumn;
    return { ...column, key: `${part}_${axis}`, path: [key, i], part, target: column.path };
  });
  return [made, ...axes];
}

/** Columns of each list. */
export const LIST_FORMS: Readonly<Record<ListWord, () => ListForm>> = {
  wire: () => made('wire', WIRES),
  pipe: () => made('pipe', PIPES),
};
