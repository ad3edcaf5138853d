import { outletLoad } from '../query/load/index.js';
import { isSlideOut } from '../records/opening.js';
import { slideLines } from './card-lines.js';
import { linkTo, type Pocket } from './pocket.js';
import type { Row, Screen } from './screens.js';

const HEATER_W = 1500;

/** Questions that are answered from several kinds of record: a heater, welding, a cracked skin, a stuck slide-out. */
export function specialScreens(p: Pocket, has: (id: string) => boolean): readonly Screen[] {
  const { say } = p;
  const screens: readonly Screen[] = [
    {
      id: 't-heater',
      title: say('pocket.heater'),
      lead: say('pocket.heater.how'),
      groups: [{ rows: heaterRows(p, has) }],
      notes: [],
    },
    {
      id: 't-slide',
      title: say('pocket.slide'),
      caution: say('pocket.slide.how'),
      groups: [{ rows: slideRows(p, has) }],
      notes: [],
    },
    ...(p.edition === 'owner'
      ? []
      : [
          {
            id: 't-weld',
            title: say('pocket.weld'),
            caution: say('pocket.weld.how'),
            groups: [{ rows: alloyRows(p, has) }],
            notes: [],
          },
          {
            id: 't-skin',
            title: say('pocket.skin'),
            caution: say('pocket.skin.how'),
            groups: [{ rows: skinRows(p, has) }],
            notes: [],
          },
        ]),
  ];
  return screens.map((one) =>
    one.groups.every(({ rows }) => rows.length === 0) ? { ...one, groups: [], empty: say('pocket.empty') } : one,
  );
}

/** One outlet stands for its circuit: what is plugged in loads all of it. */
function heaterRows(p: Pocket, has: (id: string) => boolean): readonly Row[] {
  const { shell } = p.assessment.model;
  const circuitAt = new Map(shell.runs.flatMap(({ from, to, circuit }) => [from, to].map((end) => [end, circuit] as const)));
  const asked = new Set<string>();
  return shell.nodes
    .filter(({ role, medium }) => role === 'outlet' && medium === 'ac')
    .flatMap(({ id, name, circuit = circuitAt.get(id) ?? id }): readonly Row[] => {
      if (asked.has(circuit)) return [];
      asked.add(circuit);
      const answer = outletLoad(p.assessment, id, { w: HEATER_W });
      if (!answer) return [];
      const { loadA, withA, limitA } = answer.circuit;
      const verdict = answer.over
        ? 'pocket.heater.no'
        : answer.unknown.length > 0
          ? 'pocket.heater.unknown'
          : 'pocket.heater.yes';
      const amps = [loadA, withA].map((a) => `${Math.ceil(a * 10 - 1e-9) / 10} A`).join(' → ');
      return [
        {
          links: [linkTo(answer.circuit.id, has), linkTo(id, has)],
          text: `${p.say(verdict)}: ${amps}${limitA === undefined ? '' : ` / ${limitA} A`}${name ? ` (${name})` : ''}`,
        },
      ];
    });
}

/** Slide-outs with what rides on them and what drives them, by what the records say belongs together. */
function slideRows(p: Pocket, has: (id: string) => boolean): readonly Row[] {
  const { shell } = p.assessment.model;
  return shell.openings.filter(isSlideOut).map((opening) => {
    const riding = shell.components.filter((one) => one.ridesOn === opening.id);
    const driving = shell.nodes.filter(({ medium }) => medium === 'hydraulic');
    const links = [...riding, ...driving].map(({ id }) => linkTo(id, has));
    return {
      links: [linkTo(opening.id, has)],
      lines: [...slideLines(opening, p), { head: p.say('pocket.card.listed'), links }],
    };
  });
}

function alloyRows({ assessment }: Pocket, has: (id: string) => boolean): readonly Row[] {
  const by = new Map<string, string[]>();
  for (const { id, alloy } of assessment.model.shell.members) {
    const list = by.get(alloy ?? '?') ?? [];
    list.push(id);
    by.set(alloy ?? '?', list);
  }
  return [...by].map(([alloy, ids]) => ({ links: ids.map((id) => linkTo(id, has)), text: alloy }));
}

function skinRows({ assessment, show, told }: Pocket, has: (id: string) => boolean): readonly Row[] {
  return assessment.model.shell.panels
    .filter(({ panelKind }) => panelKind === 'skin' || panelKind === 'roof' || panelKind === 'cap')
    .map(({ id, alloy, thicknessMm, fixing, bond }) => ({
      links: [linkTo(id, has)],
      text: [
        alloy,
        thicknessMm === undefined ? undefined : show.thickness(thicknessMm),
        fixing?.method && told(fixing.method),
        fixing?.adhesive,
        bond?.cureS === undefined ? undefined : `${Math.round(bond.cureS / 3600)} h`,
        fixing?.sealant,
      ]
        .filter(Boolean)
        .join(', '),
    }));
}
