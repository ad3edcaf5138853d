import path from 'node:path';
import { UserError } from '../../user-error.js';
import { answering } from '../answering.js';
import type { Context } from '../context.js';
import type { Status } from '../io.js';
import type { Registry } from '../registry.js';
import type { HandOver } from '../report/release.js';
import { shownPath } from '../shown-path.js';

interface Options {
  readonly shell: string;
  readonly all: boolean;
  /** Where the printed sheet goes; absent: it is not printed. */
  readonly out?: string | true;
}

export function declareRelease(registry: Registry): void {
  registry
    .add('release <shell>', 'hand-over sheet for paint and interior: weight left, where to screw, what to keep off', [
      'shellbook release QF-007',
      'shellbook release QF-007 --print              the same as a PDF with drawings, one page a subject',
      'shellbook release QF-007 --json',
    ])
    .option('--all', 'list every run near a face and every open item')
    .option('--print [file]', 'print it with its drawings (default: books/SHELL-hand-over.pdf in the store)')
    .action(
      registry.run(
        ([shell], { all, print }) => ({
          shell: shell as string,
          all: all === true,
          ...(print === undefined || print === false ? {} : { out: print as string | true }),
        }),
        release,
      ),
    );
}

async function release(options: Options, context: Context): Promise<Status> {
  if (options.out !== undefined) return printed(options.shell, options.out, context);
  const opened = await answering(options.shell, context);
  const [{ handOver }, { checkedAs }] = await Promise.all([import('../report/release.js'), import('../report/checked.js')]);
  const sheet = handOver(checkedAs(opened.assessment, opened.revision), await opened.closed());
  if (context.settings.json) {
    const { releaseJson } = await import('../report/release-json.js');
    context.print(releaseJson(sheet, opened.revision));
  } else {
    const { releaseText } = await import('../report/release-text.js');
    context.print(releaseText(sheet, context.paint, options.all));
  }
  return statusOf(sheet);
}

const statusOf = (sheet: HandOver): Status =>
  sheet.open.length > 0 || sheet.weights.budget.some((one) => one.leftKg < 0) ? 1 : 0;

async function printed(shell: string, out: string | true, context: Context): Promise<Status> {
  if (context.settings.book !== undefined)
    throw new UserError('A printed book has no hand-over sheet of its own: leave out --book, and print it from a store');
  const [{ openForAnswer, revisionOf }, { handOver }, { checkedShell }, { closedOf }, { printHandOver }] = await Promise.all([
    import('../open.js'),
    import('../report/release.js'),
    import('../report/checked.js'),
    import('../closed-of.js'),
    import('../print-hand-over.js'),
  ]);
  const opened = await openForAnswer(shell, context);
  const sheet = handOver(checkedShell(opened), await closedOf(opened));
  const file = out === true ? path.join(opened.store.root, 'books', `${shell}-hand-over.pdf`) : path.resolve(context.io.cwd, out);
  const pages = await printHandOver(opened, sheet, file, context);
  if (context.settings.json) {
    const { releaseJson } = await import('../report/release-json.js');
    context.print(releaseJson(sheet, revisionOf(opened), { file: shownPath(file, context), pages }));
  } else context.print(`${shownPath(file, context)}  ${pages} pages`);
  return statusOf(sheet);
}
