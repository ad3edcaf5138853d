import { answering } from '../answering.js';
import type { Context } from '../context.js';
import type { Status } from '../io.js';
import type { Registry } from '../registry.js';

interface Options {
  readonly shell: string;
  readonly query: string;
}

/** One word for each question about the whole shell; others of its words do as well. */
const QUESTIONS = `
Questions it knows: fuses, live, valves, frost, leak, spare conduits, unused
wires, earths, torque, tests, lifting, hanging, roof, repairs, changes,
emergency, contacts, book, axles, drilling, behind, alloy, plug,
slide, skin, bay.`;

export function declareWhere(registry: Registry): void {
  registry
    .add('where <shell> <query...>', 'finds a circuit, run, node, panel, member or weld, and says how to get to it', [
      'shellbook where QF-007 DC-12',
      'shellbook where QF-007 bay lights',
      'shellbook where QF-007 red/black rear left    by color and place',
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
  const opened = await answering(shell, context, []);
  const [{ ask }, { lookupOf }] = await Promise.all([
    import('../../query/lookup/ask.js'),
    import('../../query/lookup/lookup-of.js'),
  ]);
  const answer = ask(lookupOf(opened.assessment), query);
  const { matches, topics } = answer;
  if (context.settings.json) {
    const { whereJson } = await import('../report/where-json.js');
    context.print(whereJson(shell, opened.revision, answer, await opened.pages()));
  } else if (matches.length + topics.length > 0) {
    const { whereText } = await import('../report/where-text.js');
    const { shop, shell: of } = opened.assessment.model;
    const services = new Map(of.services.map((service) => [service.id, service.name]));
    const shown = { units: shop.units, services, ...(opened.edition ? { edition: opened.edition } : {}) };
    context.print(whereText(shown, answer, await opened.pages(), context.paint));
  } else
    context.tell(
      `Nothing in ${shell} is called \`${query}\`. See what there is: shellbook takeoff ${shell} --each, or the book's index`,
    );
  // Names that are only near to what was asked for are offered, and are no answer.
  return topics.length > 0 || matches.some(({ quality }) => quality !== 'close') ? 0 : 1;
}
