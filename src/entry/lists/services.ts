import { MEDIA, type Medium } from '../../records/names.js';
import { roleOf } from '../../store/layout.js';
import type { RecordIndex } from '../record-index.js';
import { isData } from '../yaml-text.js';
import type { ListWord } from './columns.js';

const ELECTRICAL: readonly Medium[] = ['dc', 'ac', 'data'];

/** What runs in wires, and what in pipes. */
export const mediaOf = (word: ListWord): readonly Medium[] =>
  MEDIA.filter((medium) => ELECTRICAL.includes(medium) === (word === 'wire'));

/** A service’s file. */
export interface ServiceFile {
  readonly path: string;
  /** `dc-house` */
  readonly stem: string;
  readonly name: string;
  readonly medium: string;
}

/** The services of a shell whose runs belong into this list. */
export function servicesOf(word: ListWord, known: RecordIndex): readonly ServiceFile[] {
  const media: readonly string[] = mediaOf(word);
  return [...known.files.values()].flatMap(({ path, open }) => {
    const role = roleOf(path);
    const data = open?.document.data;
    if (role.holds !== 'service' || role.shell !== known.shell || !isData(data) || !media.includes(String(data.medium)))
      return [];
    const stem = path.slice(path.lastIndexOf('/') + 1).replace(/\.yaml$/u, '');
    return [{ path, stem, name: String(data.service ?? stem), medium: String(data.medium) }];
  });
}

const NAMES: Readonly<Record<Medium, string>> = {
  dc: 'DC wiring',
  ac: 'AC wiring',
  data: 'Data',
  water: 'Water',
  drain: 'Drains',
  gas: 'Gas',
  air: 'Compressed air',
  hydraulic: 'Hydraulics',
  duct: 'Ducts',
  refrigerant: 'Refrigerant',
  fuel: 'Fuel',
};

/** A service that is not there yet: its file, and what stands in it before its first record. */
export function freshService(medium: Medium, known: RecordIndex): { readonly path: string; readonly text: string } {
  return {
    path: `shells/${known.shell}/services/${medium}.yaml`,
    text: `service: ${NAMES[medium]}\nmedium: ${medium}\ncircuits:\nnodes:\nruns:\n`,
  };
}

/** The services that a word of a sheet may mean: by file, by name, by medium. */
export function servicesNamed(said: string, services: readonly ServiceFile[]): readonly ServiceFile[] {
  const plain = said
    .trim()
    .toLowerCase()
    .replace(/\.yaml$/u, '');
  const exact = services.filter(({ stem, name }) => stem.toLowerCase() === plain || name.toLowerCase() === plain);
  return exact.length > 0 ? exact : services.filter(({ medium }) => medium === plain);
}
