import { caps } from '../coach/caps.js';
import { weldRecords } from '../coach/joints.js';
import { type Heats, memberFiles } from '../coach/members.js';
import type { Service } from '../coach/service.js';
import { day, spread } from '../dates.js';
import { at } from '../inches.js';
import { libraryFiles } from '../library-files.js';
import { ticketRecords } from '../ov021/tickets.js';
import { scatter } from '../random.js';
import { withCheckDigit } from '../vin.js';
import { readingsFor } from '../weigh.js';
import { item, list, type Rec } from '../yaml.js';
import { accessRecords, bellyRecords, skinRecords, zoneRecords } from './panels.js';
import { clamps, components, findings, openings, shellYaml, signoffs, tests, WEIGHINGS } from './papers.js';
import { GRID, PAIRS, PARTS, SHELL, STAGE_DAYS } from './plan.js';
import { type Plant, planted, type WeldChoice } from './planted/index.js';
import { services } from './services.js';

const HEATS: Heats = {
  'RT6x3x5/16': ['H-6377'],
  'RT2-1/2x2x1/4': ['H-6377'],
  I4x3: ['H-6391'],
  'DH3x2x5/32': ['D31-1004'],
  'CR6x5/32': ['D44-0318'],
  'plate 5083-H116': ['PL-8904'],
  any: ['H-6402', 'H-6408', 'H-6415'],
};

const WELDS = weldRecords(
  PAIRS,
  {
    welders: (stage, process) => (process === 'GTAW' ? ['K7'] : stage === 'roof' ? ['M3', 'B9'] : ['K7', 'M3', 'B9']),
    inspectors: ['J2', 'J5', 'J5'],
    date: (stage, i, n) => spread(...(STAGE_DAYS[stage] as readonly [string, string]), i, n),
    next: (date) => day(date, 1),
  },
  scatter(24),
);

function choice(): WeldChoice {
  const of = (stage: string): readonly string[] =>
    WELDS.filter((weld) => weld.stage === stage && weld.process === 'GMAW').map((weld) => String(weld.id));
  const joining = (pair: string): string => String(WELDS.find((weld) => String(weld.joins) === pair)?.id);
  return {
    subframe: of('subframe'),
    floor: of('floor'),
    walls: of('walls'),
    roof: of('roof'),
    knee: joining('SF-L,KG-02L'),
    apart: joining('SI-L,CB-03'),
    gusset: joining('P-R-04,G-01'),
  };
}

export const PLANTED: readonly Plant[] = planted(choice());

const idOf = (rule: string): string => PLANTED.find((plant) => plant.rule === rule)?.id ?? '';

/** The looks that a planted mistake is about: by the welder himself; turned down. */
function spoiltLooks(welds: readonly Rec[]): readonly Rec[] {
  return welds.map((weld) => {
    const look = (weld.inspections as readonly Rec[] | undefined)?.[0];
    if (weld.id === idOf('weld.own-inspection')) return { ...weld, inspections: [{ ...look, by: weld.welder }] };
    if (weld.id === idOf('weld.rejected-open'))
      return { ...weld, inspections: [{ ...look, result: 'reject', reason: 'cold lap at the start' }] };
    return weld;
  });
}

function spoil(file: string, records: readonly Rec[], of = ''): readonly Rec[] {
  return PLANTED.filter((plant) => plant.file === file).reduce((some: Rec[], plant) => plant.spoil(some, of), [...records]);
}

export function serviceText(service: Service): string {
  const file = `services/${service.file}.yaml`;
  for (const part of ['circuits', 'nodes', 'runs'] as const) {
    const records = service[part];
    records.splice(0, records.length, ...spoil(file, records, part));
  }
  return service.text();
}

/** What stands in the shell's folder for the mistakes alone: the wall bay and the conduit that hold two of them. */
const MORE_ZONES: readonly Rec[] = [
  {
    '#': ['', 'Odd corners'],
    id: 'WL-9',
    name: 'wall cavity left, bay 9',
    box: [at([GRID.x(9) + 1.6, -49.9, 11.4]), at([GRID.x(10) - 1.6, -48, 90.6])],
    concealed: true,
    carries: ['dc'],
  },
  {
    id: 'CN-1',
    name: 'conduit under the bench',
    along: [at([60, -20, 14]), at([100, -20, 14])],
    clear: '1 in x 3/4 in',
    concealed: false,
    carries: ['dc'],
  },
];

export function filesOf024(): ReadonlyMap<string, string> {
  const vin = withCheckDigit('1Z9FBK3T.T0424007');
  // Two characters exchanged.
  const wrongVin = vin.replace('0424007', '0442007');
  const shell = shellYaml(wrongVin).replace('{count: 2, load_index: 148', '{count: 2, load_index: 140');
  const welds = spoiltLooks(WELDS);
  const weldFile = (stage: string, head: string): readonly [string, string] => [
    `welds-${stage}.yaml`,
    list(
      [head],
      spoil(
        `welds-${stage}.yaml`,
        welds.filter((weld) => weld.stage === stage),
      ),
    ),
  ];
  const listed = (file: string, head: readonly string[], records: readonly Rec[]): readonly [string, string] => [
    file,
    list(head, spoil(file, records)),
  ];
  const files = new Map<string, string>([
    ['shell.yaml', shell],
    ...memberFiles(
      PARTS,
      [
        { name: 'subframe', head: ['Subframe'] },
        { name: 'floor', head: ['Floor frame'] },
        { name: 'walls', head: ['Walls'] },
        { name: 'roof', head: ['Roof: five trusses up of twelve (inches in this file)'], units: true },
      ],
      HEATS,
      {},
      (record) => spoil(`members-${stageFile(record)}.yaml`, [record])[0],
    ),
    weldFile('subframe', 'Subframe'),
    weldFile('floor', 'Floor'),
    weldFile('walls', 'Walls'),
    weldFile('roof', 'Roof, as far as it goes'),
    listed('panels-skin.yaml', ['Left side only so far'], skinRecords()),
    listed('panels-belly.yaml', ['Belly: a date where it is on'], bellyRecords()),
    listed('panels-access.yaml', ['What opens'], accessRecords()),
    [
      'panels-caps.yaml',
      list(
        ['Caps: front on, rear in the rack'],
        caps(GRID, (id) => (id.startsWith('CP-F') ? '2026-11-16' : undefined)),
      ),
    ],
    listed('openings.yaml', ['As measured'], openings()),
    listed('zones.yaml', ['Cavities'], [...zoneRecords(), ...MORE_ZONES]),
    ...services().map((service) => [`services/${service.file}.yaml`, serviceText(service)] as const),
    listed('components.yaml', [], components()),
    listed('tests.yaml', ['Tests so far'], tests()),
    [
      'findings.yaml',
      spoil('findings.yaml', findings())
        .map((one) => item(one))
        .join('\n'),
    ],
    listed('signoffs.yaml', ['Signed'], signoffs()),
    listed('clamps.yaml', ['U-bolts'], clamps()),
  ]);
  const inStore = new Map([...libraryFiles(), ...[...files].map(([name, text]) => [`shells/${SHELL}/${name}`, text] as const)]);
  const readings = readingsFor(SHELL, inStore, WEIGHINGS, ['steer', 'drive'], 77);
  const first = readings['T-1'] ?? {};
  const high = { ...readings, 'T-1': { ...first, drive: Number(first.drive) + 600 } };
  const tickets = spoil('weights.yaml', ticketRecords(WEIGHINGS, high));
  return new Map([...files, ['weights.yaml', `# Scale tickets\n${tickets.map((one) => item(one)).join('\n')}`]]);
}

const stageFile = (record: Rec): string => String(record.stage);

export const spoiltPhotos = (records: readonly Rec[]): readonly Rec[] => spoil('photos/photos.yaml', records);

/** For the tests: what must be found, where. */
export const plantedYaml = (): string =>
  list(
    ['Mistakes put into OV-024 on purpose. Written by demo-data/make; only tests read it.'],
    PLANTED.map((plant) => ({
      rule: plant.rule,
      ids: [plant.id],
      file: `shells/${SHELL}/${plant.file}`,
      what: plant.what,
      needs: plant.needs,
    })),
  );
