import type { Context } from '../context.js';
import type { Status } from '../io.js';
import { openForAnswer, revisionOf } from '../open.js';
import type { Registry } from '../registry.js';

interface Options {
  readonly shell: string;
  readonly query: string;
}

export function declareWhere(registry: Registry): void {
  registry
    .add('where <shell> <query...>', 'finds a circuit, run, node, panel, member or weld, and says how to get to it', [
      'shellbook where QF-007 DC-12',
      'shellbook where QF-007 bay lights',
      'shellbook where QF-007 red/black rear left    by colour and place',
      'shellbook where QF-007 fuses                  a question about the whole shell',
    ])
    .action(
      registry.run(
        ([shell, query]) => ({
          shell: shell as string,
          query: (query as readonly string[]).join(' '),
        }),
        find,
      ),
    );
}

async function find({ shell, query }: Options, context: Context): Promise<Status> {
  const opened = await openForAnswer(shell, context, []);
  const [{ ask }, { bookPages }] = await Promise.all([import('../../compute/lookup/index.js'), import('../book-pages.js')]);
  const answer = ask(opened.assessment, query);
  const { matches, topics } = answer;
  const pagesOf = await bookPages(opened);
  if (context.settings.json) {
    const { whereJson } = await import('../report/where-json.js');
    context.print(whereJson(shell, revisionOf(opened), answer, pagesOf));
  } else if (matches.length + topics.length > 0) {
    const { whereText } = await import('../report/where-text.js');
    context.print(whereText(opened.assessment, answer, pagesOf, context.paint));
  } else
    context.tell(
      `Nothing in ${shell} is called \`${query}\`. See what there is: shellbook takeoff ${shell} --each, or the book's index`,
    );
  // Names that are only near to what was asked for are offered, and are no answer.
  return topics.length > 0 || matches.some(({ quality }) => quality !== 'close') ? 0 : 1;
}
