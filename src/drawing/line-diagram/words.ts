import { amps } from '../../quantity/format.js';
import type { Circuit, Run, ServiceNode, Shell } from '../../records/index.js';
import type { Leg } from './tree.js';

type Recorded = Pick<Shell, 'circuits'>;

const circuitOf = ({ circuits }: Recorded, id: string | undefined): Circuit | undefined =>
  id === undefined ? undefined : circuits.find((one) => one.id === id);

/** Size of a wire or pipe as recorded of the run, else of its circuit: `14 AWG`, `1/2 in PEX`; undefined where neither says. */
export function wireSizeWords(shell: Recorded, run: Run): string | undefined {
  const one = run.size || run.conductor ? run : circuitOf(shell, run.circuit);
  if (one?.size) return one.size.text;
  const wire = one?.conductor;
  if (!wire) return undefined;
  return wire.awg ? `${wire.awg} AWG` : wire.areaMm2 ? `${wire.areaMm2} mm²` : wire.type;
}

export const colourWords = (shell: Recorded, run: Run): string | undefined => run.colour ?? circuitOf(shell, run.circuit)?.colour;

/** `15 A` of a node that protects: its own rating, else that of the circuit protected there. */
export function ratingWords({ circuits }: Recorded, node: ServiceNode): string | undefined {
  const protects = circuits.find(({ protection }) => protection?.at === node.id)?.protection?.ratingA;
  if (protects !== undefined) return amps(protects);
  const { rating } = node;
  if (!rating) return undefined;
  return rating.dimension === 'current' ? amps(rating.value) : rating.text;
}

/** `DC-01/L1 … L6` of nodes in a row, the id of one. */
export function legId({ nodes }: Leg): string {
  const [first, last] = [nodes[0]?.id ?? '', nodes.at(-1)?.id ?? ''];
  if (first === last) return first;
  let same = 0;
  while (same < first.length && first[same] === last[same]) same++;
  // Back to where the last word of the id begins: `L1 … L6`, not `L1 … 6`.
  const word = first.slice(0, same).search(/[A-Za-z]*\d*$/u);
  return `${first} … ${last.slice(Math.max(0, word))}`;
}
