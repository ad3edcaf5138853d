import type { Context } from '../context.js';
import type { Status } from '../io.js';
import type { TraceQuery } from '../kept-lookup.js';
import type { Registry } from '../registry.js';

interface Options {
  readonly shell: string;
  readonly query: string;
}

/** One word for each question about the whole shell; others of its words do as well. */
const QUESTIONS = `
Questions it knows: fuses, live, valves, frost, leak, spare ways, unused wires,
earths, torque, tests, lifting, hanging, roof, repairs, changes, emergency,
contacts, book, axles, drilling, behind, alloy.`;

export function declareWhere(registry: Registry): void {
  registry
    .add('where <shell> <query...>', 'finds a circuit, run, node, panel, member or weld, and says how to get to it', [
      'shellbook where QF-007 DC-12',
      'shellbook where QF-007 bay lights',
      'shellbook where QF-007 red/black rear left    by colour and place',
      'shellbook where QF-007 fuses                  a question about the whole shell',
    ])
    .addHelpText('after', QUESTIONS)
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
  const { keepLookup, keptLookup, placeOf } = await import('../kept-lookup.js');
  const place = await placeOf(shell, context);
  const kept = place && (await keptLookup(place));
  if (kept?.warning !== undefined) context.tell(kept.warning);
  const sought = kept ?? (await seek(shell, context));
  const { ask } = await import('../../query/lookup/ask.js');
  const answer = ask(sought.lookup, query);
  const { matches, topics } = answer;
  if (context.settings.json) {
    const { whereJson } = await import('../report/where-json.js');
    context.print(whereJson(shell, sought.revision, answer, sought.pagesOf));
  } else if (matches.length + topics.length > 0) {
    const { whereText } = await import('../report/where-text.js');
    context.print(whereText(sought, answer, sought.pagesOf, context.paint));
  } else
    context.tell(
      `Nothing in ${shell} is called \`${query}\`. See what there is: shellbook takeoff ${shell} --each, or the book's index`,
    );
  if (place && !kept) await keepLookup(place, sought);
  // Names that are only near to what was asked for are offered, and are no answer.
  return topics.length > 0 || matches.some(({ quality }) => quality !== 'close') ? 0 : 1;
}

/** Reads and computes. */
async function seek(shell: string, context: Context): Promise<TraceQuery> {
  const [{ openForAnswer, revisionOf }, { lookupOf }, { bookPages }] = await Promise.all([
    import('../open.js'),
    import('../../query/lookup/lookup-of.js'),
    import('../book-pages.js'),
  ]);
  const said: string[] = [];
  const tell = (text: string): void => {
    said.push(text);
    context.tell(text);
  };
  const opened = await openForAnswer(shell, { ...context, tell }, []);
  const { shop, shell: model } = opened.assessment.model;
  const { book } = opened.store;
  return {
    lookup: lookupOf(opened.assessment),
    units: shop.units,
    services: new Map(model.services.map((service) => [service.id, service.name])),
    revision: revisionOf(opened),
    ...(book ? { edition: book.edition } : {}),
    ...(said.length > 0 ? { warning: said.join('\n') } : {}),
    pagesOf: await bookPages(opened),
  };
}
