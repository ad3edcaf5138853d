import { UserError } from '../../user-error.js';
import { answering } from '../answering.js';
import type { Context } from '../context.js';
import type { Status } from '../io.js';
import type { Registry } from '../registry.js';

interface Options {
  readonly shell: string;
  readonly outlet: string;
  readonly add: string;
}

export function declareLoad(registry: Registry): void {
  registry
    .add('load <shell> <outlet>', 'whether an outlet can take more load: its circuit, wires, panel and supplies with it added', [
      'shellbook load QF-007 AC-03/R1 --add 1500W',
    ])
    .option('--add <load>', 'the load to add, in watts or amps', '0 W')
    .action(
      registry.run(
        ([shell, outlet], { add }) => ({ shell: shell as string, outlet: outlet as string, add: String(add) }),
        answerLoad,
      ),
    );
}

async function answerLoad({ shell, outlet, add }: Options, context: Context): Promise<Status> {
  const added = await readLoad(add);
  const opened = await answering(shell, context, []);
  const { outletLoad } = await import('../../query/load/index.js');
  const answer = outletLoad(opened.assessment, outlet, added);
  if (!answer) throw new UserError(await noOutlet(shell, outlet, opened.assessment.model.shell));
  if (context.settings.json) {
    const [{ envelope }, { loadJson }] = await Promise.all([import('../report/json.js'), import('../report/load-json.js')]);
    context.print(envelope('load', shell, opened.revision, loadJson(answer)));
  } else {
    const { loadText } = await import('../report/load-text.js');
    context.print(loadText(opened.assessment.model, answer, context.paint));
  }
  return answer.over || answer.unknown.length > 0 ? 1 : 0;
}

async function readLoad(typed: string): Promise<{ readonly a: number } | { readonly w: number }> {
  const { parseQuantity } = await import('../../quantity/parse.js');
  const w = parseQuantity(typed, 'power');
  if (w.ok && w.value >= 0) return { w: w.value };
  const a = parseQuantity(typed, 'current');
  if (a.ok && a.value >= 0) return { a: a.value };
  throw new UserError(`Found --add ${typed}; should be watts or amperes, as 1500W or 12.5A`);
}

async function noOutlet(
  shell: string,
  outlet: string,
  { nodes }: { readonly nodes: readonly { readonly id: string; readonly medium: string }[] },
): Promise<string> {
  const node = nodes.find((one) => one.id === outlet);
  if (node) return `${outlet} of ${shell} is on no DC or AC circuit with a voltage: record its circuit, and \`voltage\` there`;
  const { didYouMean } = await import('../../source/nearest.js');
  return `Nothing in ${shell} is called ${outlet}${didYouMean(
    outlet,
    nodes.filter(({ medium }) => medium === 'dc' || medium === 'ac').map(({ id }) => id),
  )}`;
}
