import { drainPlan } from '../query/lookup/index.js';
import { type CardLine, type CardLink, linkTo, type Pocket } from './pocket.js';

/** A step or task to tick off. */
export interface Tick {
  readonly text: string;
  readonly place?: string;
  readonly links: readonly CardLink[];
}

export interface OwnerScreens {
  readonly winter: { readonly steps: readonly Tick[]; readonly notes: readonly string[] };
  readonly care: { readonly recorded: boolean; readonly tasks: readonly Tick[] };
  readonly tyres: readonly CardLine[];
  readonly loading: LoadingScreen;
  readonly contacts: readonly CardLine[];
}

export interface LoadingScreen {
  readonly bays: readonly { readonly id: string; readonly name: string; readonly lines: readonly CardLine[] }[];
  readonly axles: readonly { readonly id: string; readonly lines: readonly CardLine[] }[];
  readonly unit: string;
}

/** What an owner does with the coach, and what a technician is asked on the way. */
export function ownerScreens(p: Pocket, has: (id: string) => boolean): OwnerScreens {
  return { winter: winter(p, has), care: care(p), tyres: tyres(p), loading: loading(p), contacts: contacts(p) };
}

function winter(p: Pocket, has: (id: string) => boolean): OwnerScreens['winter'] {
  const { assessment, say, told, show } = p;
  const plan = drainPlan(assessment);
  const nodes = new Map(assessment.model.shell.nodes.map((node) => [node.id, node] as const));
  return {
    steps: plan.steps.map((step) => ({
      text: [
        `${sentence(told(step.do))} ${nodes.get(step.id)?.name ?? step.id}: ${told(step.why)}`,
        step.litres ? say('pocket.winter.out', { litres: show.volume(step.litres / 1000) }) : '',
      ]
        .filter(Boolean)
        .join('; '),
      links: [linkTo(step.id, has)],
    })),
    notes: plan.notes.filter((one) => !one.includes('shellbook ')).map(told),
  };
}

const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

function care({ assessment, say, show }: Pocket): OwnerScreens['care'] {
  const items = assessment.model.shell.care ?? [];
  const everyCoach = ['care.sealant', 'care.drains', 'care.lines', 'care.corrosion'] as const;
  if (items.length === 0) return { recorded: false, tasks: everyCoach.map((key) => ({ text: say(key), links: [] })) };
  return {
    recorded: true,
    tasks: items.map((item) => {
      const last = [...item.done].sort().at(-1);
      const done = last ? say('pocket.care.last', { day: show.date(last) }) : say('pocket.care.never');
      return {
        text: `${item.what}: ${say('pocket.care.every', { every: item.every })}; ${done}`,
        links: [],
      };
    }),
  };
}

const tyres = ({ assessment, say, show }: Pocket): readonly CardLine[] =>
  assessment.model.shell.chassis.axles.map(({ id, tyres: fitted }) => ({
    head: say('pocket.tyres.axle', { axle: id, count: fitted?.count ?? '?' }),
    text:
      fitted?.inflationPa === undefined
        ? say('pocket.tyres.unknown')
        : [show.pressure(fitted.inflationPa), fitted.size].filter(Boolean).join(', '),
  }));

function loading({ assessment, say, show, told }: Pocket): LoadingScreen {
  const { shell } = assessment.model;
  const { weights } = assessment.figures;
  const names = new Map(shell.bays.map(({ id, name }) => [id, name ?? id] as const));
  return {
    unit: assessment.model.shop.units === 'metric' ? 'kg' : 'lb',
    bays: weights.bays.map((bay) => ({
      id: bay.id,
      name: names.get(bay.id) ?? bay.id,
      lines: [
        { head: say('pocket.loading.alone'), text: show.massDown(bay.allowanceKg) },
        { head: say('pocket.loading.together'), text: show.massDown(bay.togetherKg) },
        { head: say('pocket.loading.limit'), text: told(bay.limitedBy) },
      ],
    })),
    axles: weights.ratings.map((rating) => {
      const heaviest = weights.conditions
        .filter(({ certified }) => certified)
        .flatMap((one) => one.axles.filter(({ axle, lifted }) => axle === rating.axle && !lifted))
        .reduce<number | undefined>((most, { loadKg }) => (most === undefined || loadKg > most ? loadKg : most), undefined);
      return {
        id: rating.axle,
        lines: [
          ...(heaviest === undefined ? [] : [{ head: say('pocket.loading.carries'), text: show.mass(heaviest) }]),
          ...(rating.limitKg === undefined ? [] : [{ head: say('pocket.loading.may'), text: show.massDown(rating.limitKg) }]),
        ],
      };
    }),
  };
}

function contacts({ assessment, say, show }: Pocket): readonly CardLine[] {
  const { shop, shell } = assessment.model;
  const { customer, chassis, warranty = [] } = shell;
  return [
    { head: say('pocket.contacts.shop'), text: [shop.name, shop.place, shop.contact].filter(Boolean).join(', ') },
    ...(chassis.description || chassis.document
      ? [{ head: say('pocket.contacts.chassis'), text: [chassis.description, chassis.document].filter(Boolean).join(', ') }]
      : []),
    ...(customer
      ? [
          {
            head: say('pocket.contacts.owner'),
            text: [customer.name, customer.place, customer.contact].filter(Boolean).join(', '),
          },
        ]
      : []),
    ...warranty.map((one) => ({
      head: say('pocket.contacts.warranty'),
      text: say('pocket.contacts.until', { of: one.of, until: show.date(one.until) || '?', by: one.by ?? '?' }),
    })),
  ];
}
