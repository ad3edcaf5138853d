import { firstShutOffs } from '../../query/isolate/rescue.js';
import { earthNodes } from '../../query/topics/earths.js';
import type { NodeRole, ServiceNode } from '../../records/index.js';
import type { Book } from '../book.js';
import { indexOrder } from '../index-order.js';
import { type Ref, ref } from '../table.js';
import { wayToNode } from '../where.js';

/** One line of a column of the index. */
export interface IndexLine {
  readonly name: string;
  readonly sub?: string | undefined;
  /** Before the id: a marking that is not the id itself. */
  readonly see?: string;
  readonly refs: readonly Ref[];
  /** The first and the last of a row of ids. */
  readonly through?: boolean;
  readonly panels: readonly Ref[];
  readonly reach?: string | undefined;
  /** Anchor of the page. */
  readonly to: string;
}

/** Words that people use, each with what of the record it means: by medium, role and the graph, never by a name. */
export function everydayWords(book: Book): readonly IndexLine[] {
  const { shell } = book.assessment.model;
  const first = firstShutOffs(shell);
  const shutOffs = (medium: ServiceNode['medium']) => shell.nodes.filter((node) => node.medium === medium && first.has(node.id));
  const withRole = (...roles: readonly NodeRole[]) =>
    shell.nodes.filter(({ role }) => role !== undefined && roles.includes(role));
  const line = (name: string, nodes: readonly ServiceNode[]): readonly IndexLine[] => {
    const [one] = nodes;
    if (one === undefined) return [];
    const panels = [...new Set(nodes.flatMap(({ id }) => wayToNode(book, id).panels))];
    return [
      {
        name,
        refs: nodes.slice(0, MOST).map(({ id }) => ref(id)),
        panels: panels.slice(0, 2).map((id) => ref(id)),
        to: ref(one.id).to,
      },
    ];
  };
  const fuseOf = (nodes: readonly ServiceNode[]): readonly ServiceNode[] => {
    const equipment = new Set(nodes.flatMap(({ of }) => of ?? []));
    const mine = shell.nodes.filter(({ id, of }) => nodes.some((one) => one.id === id) || of?.some((one) => equipment.has(one)));
    const circuits = new Set(
      mine.flatMap(({ medium, circuit }) => ((medium === 'dc' || medium === 'ac') && circuit !== undefined ? [circuit] : [])),
    );
    const at = new Set(shell.circuits.filter(({ id }) => circuits.has(id)).flatMap(({ protection }) => protection?.at ?? []));
    return shell.nodes.filter(({ id }) => at.has(id));
  };
  const heading = (name: string, to: string): IndexLine => ({ name, refs: [], panels: [], to });
  const lines = [
    ...line('water shut-off, stopcock, main tap', shutOffs('water')),
    ...line('gas shut-off, propane valve', shutOffs('gas')),
    ...line('fuel shut-off', shutOffs('fuel')),
    ...line('dump valve, gray water, sewage', shutOffs('drain')),
    ...line(
      'battery switch, kill switch, disconnect',
      withRole('switch').filter(({ medium }) => medium === 'dc'),
    ),
    ...line(
      'main fuse',
      shutOffs('dc').filter(({ role }) => role === 'fuse'),
    ),
    ...line('shore cord, hookup, pedestal, plug', withRole('shore inlet')),
    ...line('generator, genset', withRole('generator')),
    ...line('solar, panels on the roof', withRole('solar panel', 'solar regulator')),
    ...line('charger, converter', withRole('charger', 'converter')),
    ...line('inverter', withRole('inverter', 'inverter charger')),
    ...line(
      'fuse box, breaker box, load center',
      shell.nodes.filter(({ nodeKind }) => nodeKind === 'panel'),
    ),
    ...line('pump fuse', fuseOf(withRole('pump').filter(({ medium }) => medium === 'water'))),
    ...line('slide-out fuse', fuseOf(withRole('pump').filter(({ medium }) => medium === 'hydraulic'))),
    ...line(
      'water pump',
      withRole('pump').filter(({ medium }) => medium === 'water'),
    ),
    ...line(
      'water heater, boiler',
      withRole('heater').filter(({ medium }) => medium === 'water'),
    ),
    ...line(
      'furnace, heating',
      shell.nodes.filter(({ medium, nodeKind }) => medium === 'duct' && nodeKind === 'source'),
    ),
    ...line('outlets, receptacles, sockets', withRole('outlet')),
    ...line('lights, lamps', withRole('lamp')),
    ...line('faucets, taps', withRole('tap')),
    ...line('low-point drains', withRole('drain cock')),
    ...line('grounds, earths, bonding', earthNodes(shell)),
    heading('stain under a ceiling, drip, leak', 'h-leaks'),
    heading('wire without a tag, by color', 'h-colours'),
    heading('slide-out stuck, crank, hand pump', 'h-slide'),
    heading('space heater, what may be plugged in', 'h-power'),
    heading('cracked skin, sheet, glue', 'h-skin-repair'),
    heading('winterize, frost, antifreeze', 'h-frost'),
    heading('jack, lift, tow, tie down', 'h-lift'),
    heading('torque, tightening', 'h-torques'),
    heading('tires, tyres, tire pressure, wheels', 'h-ratings'),
    heading('tail light, brake light, turn signal, horn, wipers: the chassis maker’s, where not on record here', 'h-who'),
  ];
  const order = indexOrder('en');
  return [...lines].sort((a, b) => order(a.name, b.name));
}
const MOST = 4;
